"""The diagnostic engine: what to do next so that a good bead comes soonest. A pure library.

It knows no clock, disk, screen or randomness. `network` holds what is in play, `belief` replays
a log, `plan` prices the way to a good bead, `choice` picks the next step, `explain` tells why.
"""
