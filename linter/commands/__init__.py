"""The commands of the program, one module each; only the one asked for is imported.

Each module has ``arguments(parser)``, which declares what the command takes, and
``run(options)``, which gives the exit status.
"""

RELEASED, HELD, NOT_ASSESSED = 0, 1, 2
