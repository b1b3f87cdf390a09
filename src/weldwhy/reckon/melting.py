"""Calculators of the wire: feed from amps, amps from feed, and what it lays down."""

from __future__ import annotations

from weldwhy.arithmetic import melting
from weldwhy.arithmetic.bounds import remarks
from weldwhy.beadtravel import weight_share
from weldwhy.model import RuleBase
from weldwhy.reckon import figures
from weldwhy.reckon.calculator import Calculator, Given, Input, Outcome

_WIRE = Input("wire", "kind of wire", "choice", "solid-steel", choices=figures.wires)
_SIZE = Input("size", "wire size", "length", "0.035 in")
_STICK_OUT = Input("stick_out", "stick-out", "length", "3/8 in")
_FEED = Input("feed", "wire feed", "feed", "250 ipm")
_MEAN = "Mean amps of a steady arc on plus, within a fifth or so: the test bead decides."


def _wire_feed(rules: RuleBase, given: Given) -> Outcome:
    alpha, beta = rules.tables["melting"].rows[given.word("wire")]
    feed = melting.melting_feed(
        given.number("amps"), given.number("size"), given.number("stick_out"), alpha, beta
    )
    return Outcome((figures.result("feed", "wire feed", "feed", feed),), (*remarks(feed), _MEAN))


def _amps(rules: RuleBase, given: Given) -> Outcome:
    alpha, beta = rules.tables["melting"].rows[given.word("wire")]
    amps = melting.melting_amps(
        given.number("feed"), given.number("size"), given.number("stick_out"), alpha, beta
    )
    return Outcome((figures.result("amps", "amps", "current", amps),), (*remarks(amps), _MEAN))


def _deposition(rules: RuleBase, given: Given) -> Outcome:
    process, feed, size = given.word("process"), given.number("feed"), given.number("size")
    density = figures.density(rules, given.word("metal")) * weight_share(rules, process)
    share = figures.efficiency(rules, process, given.word("gas"))
    laid = melting.deposition(feed, size, density, share)
    used = melting.deposition(feed, size, density, 1)
    return Outcome(
        (
            figures.result("rate", "weld metal laid down", "rate", laid),
            figures.result("used", "wire used", "rate", used),
            figures.result("share", "share that ends in the weld", "percent", share * 100),
        ),
        (*remarks(laid), *figures.cored(rules, process)),
    )


CALCULATORS = (
    Calculator(
        "wire-feed", "wire feed for amps", "wire",
        "The wire feed that so many amps melt. For cored wire no figures are known: its label "
        "tells the feed.",
        (_WIRE, _SIZE, Input("amps", "amps", "current", "150 A"), _STICK_OUT),
        _wire_feed, (melting.melting_feed,),
    ),
    Calculator(
        "amps-from-feed", "amps from wire feed", "wire",
        "The amps that a wire feed draws. For cored wire no figures are known: read the machine.",
        (_WIRE, _SIZE, _FEED, _STICK_OUT), _amps, (melting.melting_amps,),
    ),
    Calculator(
        "deposition", "weld metal per hour", "wire",
        "How much weld metal a wire feed lays down in an hour of arc.",
        (Input("process", "process", "choice", "gmaw", choices=figures.wire_processes),
         Input("metal", "metal", "choice", "mild-steel", choices=figures.metals),
         _SIZE, _FEED,
         Input("gas", "shielding gas", "choice", "c25", optional=True, choices=figures.gases)),
        _deposition, (melting.deposition,),
    ),
)  # fmt: skip
