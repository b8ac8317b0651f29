#include "core/hardiness/kill_remarks.hpp"

#include <cmath>

namespace bullace::hardiness {

namespace {

Remark::Number degrees(double temperatureC) {
    return {temperatureC, 1};
}

// Some died and some lived, at more than one temperature.
void saySteepness(Overlap overlap, Remarks& out) {
    if (overlap == Overlap::Separated) {
        out.push_back({BULLACE_SENTENCE(
                           "Remark",
                           "No temperature killed only a part of the buds: the curve's steepness "
                           "cannot be told. Test temperatures closer together."),
                       {}});
    } else if (overlap == Overlap::QuasiSeparated) {
        out.push_back(
            {BULLACE_SENTENCE("Remark",
                              "One temperature alone killed only a part of the buds: the curve's "
                              "steepness cannot be told. Test temperatures closer together."),
             {}});
    } else {
        out.push_back({BULLACE_SENTENCE(
                           "Remark",
                           "The share of dead buds does not rise with frost: there is no killing "
                           "temperature to tell. Have temperatures or counts been exchanged?"),
                       {}});
    }
}

void sayNoCurve(const KillCurve& curve, Remarks& out) {
    switch (curve.overlap) {
    case Overlap::Nothing:
        out.push_back(
            {BULLACE_SENTENCE("Remark", "No buds were counted: nothing can be told."), {}});
        return;
    case Overlap::NoneDead:
        out.push_back(
            {BULLACE_SENTENCE("Remark",
                              "None of the buds died: the killing temperature is colder than the "
                              "coldest tested, %1 °C."),
             {degrees(curve.coldestC)}});
        return;
    case Overlap::AllDead:
        out.push_back(
            {BULLACE_SENTENCE("Remark",
                              "All of the buds died: the killing temperature is warmer than the "
                              "warmest tested, %1 °C."),
             {degrees(curve.warmestC)}});
        return;
    case Overlap::OneDose:
        out.push_back(
            {BULLACE_SENTENCE("Remark", "Only %1 °C was tested: a curve needs more temperatures."),
             {degrees(curve.warmestC)}});
        return;
    default:
        saySteepness(curve.overlap, out);
        return;
    }
}

void sayBracket(const KillCurve& curve, Remarks& out) {
    if (curve.bracket) {
        out.push_back({BULLACE_SENTENCE("Remark", "Half of the buds died between %1 and %2 °C."),
                       {degrees(curve.bracket->warmerC), degrees(curve.bracket->colderC)}});
    }
}

void sayFit(const GoodnessOfFit& goodness, Remarks& out) {
    if (!goodness.heterogeneity) {
        out.push_back(
            {BULLACE_SENTENCE("Remark", "Too few temperatures to see whether the curve fits them."),
             {}});
    } else if (goodness.isPoor()) {
        out.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The counts lie farther from the curve than chance explains "
                              "(heterogeneity %1 with %2 degrees of freedom): the limits are "
                              "widened for it."),
             {Remark::Number{*goodness.heterogeneity, 2},
              std::int64_t{goodness.degreesOfFreedom}}});
    }
}

void sayPoint(const KillPoint& point, Remarks& out) {
    const Remark::Number percent{point.part * 100, 0};
    if (point.isBeyondTested) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "The temperature that kills %1 % (%2 °C) lies outside of "
                                        "those tested: it is extrapolated."),
                       {percent, degrees(point.temperatureC.value)}});
    }
    const bool isBounded = point.temperatureC.interval &&
                           std::isfinite(point.temperatureC.interval->low) &&
                           std::isfinite(point.temperatureC.interval->high);
    if (!isBounded) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "The temperature that kills %1 % is not bounded on both "
                                        "sides by these counts: more temperatures or buds are "
                                        "needed."),
                       {percent}});
    }
}

void sayShape(const KillCurve& curve, Remarks& out) {
    if (curve.natural) {
        out.push_back(
            {BULLACE_SENTENCE("Remark",
                              "%1 % of the buds were dead without frost; the temperatures "
                              "are for the others."),
             {Remark::Number{curve.natural->natural * 100, 1}}});
    }
    if (curve.natural && curve.natural->goodness.isPoor()) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "The counts lie farther from the curve than chance "
                                        "explains; the limits are narrower than they should be."),
                       {}});
    }
    if (!curve.natural && curve.fit) {
        sayFit(curve.fit->goodness, out);
    }
    const bool isHalfBeyond = !curve.bracket && (curve.overlap == Overlap::Overlapping ||
                                                 curve.overlap == Overlap::QuasiSeparated);
    if (isHalfBeyond && curve.dead * 2 < curve.counted) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "At no temperature were half of the buds dead: half are "
                                        "killed below the coldest tested, %1 °C."),
                       {degrees(curve.coldestC)}});
    } else if (isHalfBeyond) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "At every temperature at least half of the buds were dead: "
                                        "half are killed above the warmest tested, %1 °C."),
                       {degrees(curve.warmestC)}});
    }
}

void sayLeftOut(const std::string& name, Overlap overlap, Remarks& out) {
    if (overlap == Overlap::NoneDead) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "%1 is left out: none of its buds died, so half are "
                                        "killed below the coldest tested."),
                       {name}});
    } else if (overlap == Overlap::AllDead) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "%1 is left out: all of its buds died, so half are "
                                        "killed above the warmest tested."),
                       {name}});
    } else {
        out.push_back(
            {BULLACE_SENTENCE("Remark", "%1 is left out: none of its buds were counted."), {name}});
    }
}

void sayLack(SlopeComparison::Lack lack, Remarks& out) {
    if (lack == SlopeComparison::Lack::TooFewGroups) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "A comparison needs two accessions of which some buds died "
                                        "and some lived."),
                       {}});
    } else if (lack == SlopeComparison::Lack::NoFiniteSlope) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "No accession has temperatures that overlap in dead and "
                                        "living buds: a common steepness cannot be told."),
                       {}});
    } else if (lack == SlopeComparison::Lack::NoRise) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "Over all accessions the share of dead buds does not rise "
                                        "with frost: there is nothing to compare."),
                       {}});
    }
}

} // namespace

Remarks remarksOn(const KillCurve& curve, bool hasControl) {
    Remarks out;
    if (curve.rowsEmpty > 0) {
        out.push_back({BULLACE_SENTENCE("Remark", "Rows without counted buds, left out: %1."),
                       {static_cast<std::int64_t>(curve.rowsEmpty)}});
    }
    if (!curve.fit && !curve.natural) {
        // With a control it need not be the frost that the curve fails on.
        if (!hasControl || curve.overlap != Overlap::Overlapping) {
            sayNoCurve(curve, out);
        }
        sayBracket(curve, out);
    }
    sayShape(curve, out);
    for (const KillPoint& point : curve.points) {
        sayPoint(point, out);
    }
    if (!curve.fit && curve.meanKill && curve.meanKill->trim > 0) {
        out.push_back(
            {BULLACE_SENTENCE("Remark",
                              "The mean killing temperature without a curve leaves %1 % of the "
                              "buds away on either side, because not all lived at the warmest "
                              "temperature or not all died at the coldest."),
             {Remark::Number{curve.meanKill->trim * 100, 1}}});
    }
    if (hasControl && !curve.natural) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "The share of buds that is dead without frost could not be "
                                        "estimated together with a curve."),
                       {}});
    }
    out.push_back({BULLACE_SENTENCE("Remark",
                                    "Estimated from the station's own freezing tests, as the buds "
                                    "were hardened on their day; official forecasts and local "
                                    "advice come first."),
                   {}});
    return out;
}

Remarks remarksOn(const SlopeComparison& comparison) {
    Remarks out;
    for (const auto& [name, overlap] : comparison.leftOut) {
        sayLeftOut(name, overlap, out);
    }
    sayLack(comparison.lack, out);
    if (comparison.fit && comparison.fit->parallelism && comparison.fit->parallelism->p < 0.05) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "The accessions differ in steepness (p = %1): the "
                                        "differences hold at half kill alone."),
                       {Remark::Number{comparison.fit->parallelism->p, 4}}});
    }
    if (comparison.fit && comparison.fit->goodness.isPoor()) {
        out.push_back({BULLACE_SENTENCE("Remark",
                                        "The counts lie farther from the curves than chance "
                                        "explains: differences are less sure than their limits "
                                        "say."),
                       {}});
    }
    return out;
}

Remark remarkOnControl() {
    return {
        BULLACE_SENTENCE("Remark",
                         "The control died as much as the frozen buds: there is no kill to tell "
                         "from it."),
        {}};
}

} // namespace bullace::hardiness
