"""Words that people use for one another in a shop; each set is met as its first word.

Only whole-word swaps that hold in nearly every sentence. What needs a phrase is in the rules.
"""

from __future__ import annotations

_SETS = """
pool puddle
narrow skinny
spool reel
roller roll
nozzle shroud
rod electrode
torch gun
breeze draft wind
dial knob
lump bump blob
big large huge massive great fat
small little tiny wee
quick fast rapid
lead cable
crack split fracture
crust skin
grey gray dull
tangle bunch snarl
shop workshop garage shed
middle centre center
edge toe
wobble jerk
stop end finish
start begin
fuse breaker
dim dip
socket outlet receptacle
glove mitt
choke clog block
swap change replace
fan blower
bright shiny
flutter flicker
smash snap
eat dig gouge
trench ditch groove channel moat
volt voltage
amp amperage ampere current
damp moisture wet moist water soggy
rag cloth
bead seam pass weld
brush scrub
stutter sputter splutter cough
creep crawl
"""

SAME: dict[str, str] = {
    word: words.split()[0] for words in _SETS.strip().splitlines() for word in words.split()
}
