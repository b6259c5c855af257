"""`python -m buildplan`."""

from buildplan.cli import main

main()
