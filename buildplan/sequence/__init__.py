"""The sequence: operations, what each needs first, and the order that hands can follow."""
