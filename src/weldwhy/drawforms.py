"""The declared form of a picture: which drawing it is, and the parameters of each."""

from __future__ import annotations

from weldwhy.beadforms import BEAD
from weldwhy.sceneforms import SCENES
from weldwhy.shape import keys, optional

PICTURE = keys("picture", optional("bead", BEAD, "a bead, from above and cut through"), *SCENES)
