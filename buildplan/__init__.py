"""buildplan: from the design of a link-balloon piece to the booklet that builds it."""

import os

# Linear algebra in one thread, set before numpy is loaded: the matrices here are small, so that
# threads only get in one another's way, and sums come out the same on any number of cores.
for _variable in ("OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS", "VECLIB_MAXIMUM_THREADS"):
    os.environ.setdefault(_variable, "1")

__version__ = "0.1.0"
