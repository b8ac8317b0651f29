// Mixed models of large tables against outside fits.
#include "trials/case_table.hpp"

#include "core/trials/mixed_model.hpp"
#include "support/check_case.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::trials;
using test::CheckCase;
using test::tableOf;

namespace {

void compareSample(const CheckCase& check, const MixedFit& fit) {
    for (const auto& [term, levels] : check.expected().at("blup_sample").items()) {
        const RandomPredictions* predictions = fit.predictionsOf(term);
        REQUIRE(predictions != nullptr);
        for (const Prediction& each : predictions->levels) {
            if (levels.contains(each.level)) {
                const std::string path = "blup_sample." + term + "." + each.level;
                CHECK(check.agrees(levels.at(each.level).is_object() ? path + ".u" : path,
                                   each.value));
            }
        }
    }
}

} // namespace

TEST_CASE("200,000 plots of 2,000 accessions: as an outside fit has it") {
    const auto check = CheckCase::open("reml-big-trial");
    if (!check) {
        return;
    }
    MixedSpec spec;
    spec.fixed = {{"year"}};
    spec.random = {{{"gen"}}, {{"gen", "year"}}, {{"year", "block"}}};
    const TrialTable table = tableOf(*check);
    const auto fit = fitMixed(table, spec, {{}, false, false, true});
    REQUIRE(fit.ok());
    for (const VarianceComponent& component : fit->variances) {
        CHECK(check->agrees("varcomp." + component.name, component.value));
    }
    CHECK(check->agrees("reml_deviance", -2 * fit->logLikelihood));
    compareSample(*check, *fit);
    MESSAGE(check->asked() << " numbers, " << fit->evaluations << " evaluations");
}

TEST_CASE("73,421 ratings of students and lecturers, crossed: Bates et al. 2015") {
    const auto check = CheckCase::open("reml-insteval-large");
    if (!check) {
        return;
    }
    MixedSpec spec;
    spec.fixed = {{"service"}};
    spec.random = {{{"s"}}, {{"d"}}, {{"dept", "service"}}};
    const TrialTable table = tableOf(*check);
    const auto fit = fitMixed(table, spec, {{}, false, false, true});
    REQUIRE_MESSAGE(fit.ok(), (fit.ok() ? "" : fit.error().message));
    for (const VarianceComponent& component : fit->variances) {
        CHECK(check->agrees("varcomp." + component.name, component.value));
    }
    CHECK(check->agrees("reml_deviance", -2 * fit->logLikelihood));
    compareSample(*check, *fit);
    MESSAGE(check->asked() << " numbers, " << fit->evaluations << " evaluations");
}
