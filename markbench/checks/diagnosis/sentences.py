"""Numbers into words: the explanation for the teacher and the feedback for the learner."""

from __future__ import annotations

import warnings
from collections.abc import Mapping
from string import Formatter

import numpy as np

from markbench.checks.diagnosis.mending import Mended
from markbench.checks.diagnosis.slips import SLIPS
from markbench.checks.diagnosis.slips_de import BOTH_MENDED, GERMAN
from markbench.checks.wording import cm, listed
from markbench.model import Estimate, Explanation, Figures, Gravity, joined, opening, say
from markbench.physics.honest import Array
from markbench.physics.lines import fit_lines
from markbench.physics.pendulum import FOUR_PI_SQUARED
from markbench.physics.reporting import with_uncertainty
from markbench.physics.stack import Stack

# A best g that moves by less than this share of its uncertainty has not moved.
_HARDLY = 0.1

_TIMINGS = (
    say("the first timing"),
    say("the second timing"),
    say("the third timing"),
    say("the fourth timing"),
    say("the fifth timing"),
    say("the sixth timing"),
)


def honest_sentence(best: Gravity | None) -> str:
    """Honest work, as an explanation."""
    return say("Ordinary scatter explains these readings: g = {g}.", g=_gravity(best))


def places(
    stack: Stack,
    i: int,
    slip: str,
    mended: Mended,
    parameters: Mapping[str, Estimate],
    best: Gravity | None,
    g: float | None,
    u_g: float | None,
) -> dict[str, dict[str, str]]:
    """What the braces stand for, with this learner's numbers, for each part of ``slip``."""
    return {
        part: _places(stack, i, part, mended, parameters, best, g, u_g) for part in slip.split("+")
    }


def _places(
    stack: Stack,
    i: int,
    slip: str,
    mended: Mended,
    parameters: Mapping[str, Estimate],
    best: Gravity | None,
    g: float | None,
    u_g: float | None,
) -> dict[str, str]:
    facts = mended.facts
    at = ("clock_row", "clock_timing") if slip == "clock_misread" else ("row", "timing_index")
    row, timing = (int(facts[name]) for name in at)
    typed_length, typed_time = stack.length_m[i, row], stack.times_s[i, row, timing]
    out = {
        "swings": Figures(f"{float(facts['swings']):g}"),
        "g_before": _gravity(best),
        "g_mended": say("not known") if g is None else with_uncertainty(g, u_g or 0.0, "m/s²"),
        "line_before": "",
        "line_mended": "",
        "length": cm(float(typed_length)),
        "timing": _timing(timing),
        "time": _seconds(typed_time, stack.time_step_s[i]),
        "time_meant": _seconds(float(facts.get("clock_meant_s", typed_time)), mended.step_s),
        "unit": str(facts.get("unit", "")),
        "form": str(facts.get("form", "")),
        "length_typed": Figures(f"{100 * typed_length:g} cm"),
        "length_meant": Figures(f"{100 * mended.length_m[row]:.3g} cm"),
        "where": say("the length {length}", length=cm(float(typed_length))),
        "typed": Figures(f"{100 * typed_length:g} cm"),
        "meant": "",
        "other_length": "",
        "really": "",
        "size": "",
        "amplitude": "",
        "misfit": "",
        "formula_g": "",
    }
    if g is not None and best is not None and abs(g - best.g) < _HARDLY * best.u_g:
        out["line_before"] = _line(stack.length_m[i], stack.times_s[i], stack.swings[i])
        out["line_mended"] = _line(mended.ghost_length_m, mended.times_s, mended.swings)
    if "swings" in parameters:
        out["really"] = Figures(f"{parameters['swings'].value:g}")
    if "length_error_m" in parameters:
        size = parameters["length_error_m"]
        out["size"] = with_uncertainty(100 * size.value, 100 * size.u, "cm")
    if "amplitude_deg" in parameters:
        out["amplitude"] = f"{parameters['amplitude_deg'].value:.0f}°"
    if "time_meant_s" in parameters:
        out["where"] = say("{timing} at {length}", timing=out["timing"], length=out["length"])
        out["typed"] = Figures(f"{out['time']} s")
        out["meant"] = Figures(f"{parameters['time_meant_s'].value:g} s")
    if "length_meant_m" in parameters:
        out["where"] = say("the length of row {row}", row=row + 1)
        out["meant"] = Figures(f"{100 * parameters['length_meant_m'].value:g} cm")
    if "other_row" in facts:
        out["other_length"] = cm(float(stack.length_m[i, int(facts["other_row"])]))
    if "misfit_s" in parameters:
        out["misfit"] = Figures(f"{max(parameters['misfit_s'].value, 0.01):.2f}")
    if "formula_g" in parameters:
        out["formula_g"] = Figures(f"{parameters['formula_g'].value:g}")
    return out


def _line(length_m: Array, times_s: Array, swings: Array) -> str:
    """g from the straight line through the readings, as the learner would draw it."""
    with np.errstate(invalid="ignore"), warnings.catch_warnings():
        warnings.simplefilter("ignore", RuntimeWarning)  # rows without a time stay nan
        period = np.nanmean(times_s, axis=1) / swings
    line = fit_lines(length_m, period**2)
    slope, u = float(line.slope[0]), float(line.u_slope[0])
    if not slope > 0:
        return say("not known")
    g = FOUR_PI_SQUARED / slope
    return with_uncertainty(g, g * u / slope, "m/s²")


Filled = Mapping[str, Mapping[str, str]]


def sentence(slip: str, filled: Filled) -> str:
    """The explanation for the teacher; of two slips that neither would do alone.

    A best estimate that had given an odd number little weight does not move when it is put
    right: then it is the learner's line that does, and the sentence says so.
    """
    parts = slip.split("+")
    first = filled[parts[0]]
    told = [say(SLIPS[part].beside, **filled[part]) for part in parts]
    if first["line_mended"]:
        main = (
            say("One thing would explain these readings: {one}.", one=told[0])
            if len(told) == 1
            else say(
                "Two things together would explain these readings: {one}, and {other}.",
                one=told[0],
                other=told[1],
            )
        )
        moved = say(
            "g hardly changes by it: {g_mended}."
            if first["line_mended"] == first["line_before"]
            else "The line then gives g = {line_mended} instead of {line_before}; the best "
            "estimate, {g_mended}, hardly moves.",
            line_mended=first["line_mended"],
            line_before=first["line_before"],
            g_mended=first["g_mended"],
        )
        return joined((main, moved))
    if len(parts) == 1:
        return say(SLIPS[slip].sentence, **first)
    one, other = told
    return say(
        "Two things together would explain these readings: {one}, and {other}. With both, g "
        "becomes {g_mended} instead of {g_before}.",
        one=one,
        other=other,
        g_mended=first["g_mended"],
        g_before=first["g_before"],
    )


def to_learner(slip: str, filled: Filled) -> str:
    """The explanation for the learner, and what g then is."""
    parts = slip.split("+")
    told = [part_to_learner(part, filled) for part in parts]
    if len(parts) > 1:
        mended = "With both put right, your readings give g = {g_mended}."
    else:
        mended = SLIPS[slip].mended
    return " ".join([*told, mended.format(**filled[parts[0]])]).strip()


def part_to_learner(part: str, filled: Filled) -> str:
    """One slip explained to the learner, without a g that another slip beside it would alter."""
    return SLIPS[part].learner.format(**filled[part])


def ask(slip: str, filled: Filled) -> str:
    """What to ask the learner."""
    return joined(say(SLIPS[part].ask, **filled[part]) for part in slip.split("+"))


def settle(slip: str, filled: Filled) -> str:
    """What would settle it, in whole sentences."""
    ways = (say(SLIPS[part].settle, **filled[part]) for part in slip.split("+"))
    return joined(say("{way}.", way=opening(way)) for way in ways)


_NEEDED = {
    name: frozenset(field for _, field, _, _ in Formatter().parse("".join(words)) if field)
    for name, words in GERMAN.items()
}


def to_say(slip: str, filled: Filled) -> dict[str, dict[str, str]]:
    """Of what the braces stand for, as much as another language needs."""
    needed = ((part, _NEEDED.get(part, frozenset()) | {"g_mended"}) for part in slip.split("+"))
    return {part: {name: filled[part][name] for name in names} for part, names in needed}


def in_language(language: str, explanation: Explanation, slip: str) -> tuple[str, str]:
    """What to ask and to tell the learner in another language; empty without words for it.

    ``slip`` is the explanation's own, or one of two slips in it.
    """
    parts, places = slip.split("+"), explanation.places
    ready = all(part in GERMAN and _NEEDED[part] <= set(places.get(part, ())) for part in parts)
    if language != "de" or not ready:
        return "", ""
    ask = " ".join(GERMAN[part].ask.format(**places[part]) for part in parts)
    told = [GERMAN[part].learner.format(**places[part]) for part in parts]
    if slip == explanation.slip:  # of one slip alone beside another, nobody knows its g
        mended = BOTH_MENDED if len(parts) > 1 else GERMAN[slip].mended
        told.append(mended.format(**places[parts[0]]))
    return ask, " ".join(told).strip()


def title(slip: str) -> str:
    """The slip's short name; two at once joined by “and”."""
    if slip == "honest":
        return say("ordinary scatter")
    return listed([say(SLIPS[name].title) for name in slip.split("+")])


def indistinct(one: str, other: str) -> str:
    """That these readings cannot tell two explanations apart."""
    return say(
        "These readings cannot tell “{one}” from “{other}”.", one=title(one), other=title(other)
    )


def _timing(index: int) -> str:
    return _TIMINGS[index] if index < len(_TIMINGS) else say("the {n}th timing", n=index + 1)


def _gravity(best: Gravity | None) -> str:
    return say("not known") if best is None else with_uncertainty(best.g, best.u_g, "m/s²")


def _seconds(time_s: float, step_s: float) -> str:
    places = max(0, round(-np.log10(step_s)))
    return Figures(f"{time_s:.{places}f}")
