"""Words that are right as they are written, so that they are not taken for misspelt ones."""

from __future__ import annotations

import re

from weldwhy.model import RuleBase

_COMMON = """
two new cold size test mark cross
about above after again against ages almost along already also always another anyway around away
back bang beginner behind being below best better between beside bits both bought bought boss brand
bring brother buddy called came change changed couple cost dad daughter didnt different doing done
down each either else enough even ever every everything everywhere evening exactly father fault
feel feels felt few find fine first found friend front full funny gave getting given goes going
gone good great guess guys hand hands happen happens hard hate head hear heard help here hobby home
hope hours house idea into job just keep keeps kept kind knew know last late learn learning least
left less lesson level life line list little live long look looked looking looks lots love lovely
made make makes making many matter mates mine minute minutes moment money month months more morning
most mother much need needs neighbour never next nice night normal nothing number often okay once
only other others over page part past people person phone photo picture place plenty point pretty
problem project proper question quick quite rather read reads ready real really rest right room
round same saturday school second seem seems self shop shows sick side since sister small some
someone something sometimes soon sorry sort start started starting still stop stuff such sunday
sure take takes taking tell than thank thanks that their them then there these they thing things
think thinking third this those though thought three through time times today together told
tomorrow took tools totally tried tries trouble trying turn turned twice under understand until
upon used useful uses using usual very video wait want wanted wants watch watched week weekend
weeks well were what when where which while whole will wife wish with without woman wonder word
words work worked working works world worry worse would wrong year years yesterday young your
love cake bread dinner lunch supper dog cat car cars bike boat house kitchen garden window music
food coffee water money price cheap buy bought sell sold store shipping email site forum post
hello regards cheers pardon football game games movie book books letter letters writing written
"""
_LETTERS = re.compile(r"[a-z]+")


def everyday_words() -> frozenset[str]:
    """Plain English words that belong to no trade."""
    return frozenset(_COMMON.split())


def right_words(rules: RuleBase) -> frozenset[str]:
    """Plain English words, and all that the rules use anywhere."""
    texts = [_COMMON, *(each.ask for each in rules.checks.values())]
    texts += [answer.text for each in rules.checks.values() for answer in each.answers]
    texts += [each.looks for each in rules.symptoms.values()]
    texts += [each.what for each in rules.causes.values()]
    texts += [remedy.do for each in rules.causes.values() for remedy in each.remedies]
    texts += [f"{each.name} {each.means}" for each in rules.terms.values()]
    return frozenset(_LETTERS.findall(" ".join(texts).lower()))
