"""What to buy: money, shopping lists, packing."""
