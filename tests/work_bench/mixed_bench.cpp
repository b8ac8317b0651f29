// Mixed models: a large trial and three small tables against lme4 in the same run, where R with
// lme4 is installed, and breeding values of 10,000 individuals through their pedigree.
#include "bench/measure.hpp"
#include "work_bench/work_benches.hpp"

#include "core/breeding/related.hpp"
#include "core/report/csv.hpp"
#include "core/statistics/distributions.hpp"
#include "core/trials/mixed_model.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <random>
#include <sstream>

namespace bullace::bench {

namespace {

using namespace trials;

double even(std::mt19937_64& dice) {
    return (static_cast<double>(dice() >> 11) + 0.5) * 0x1p-53;
}
double normal(std::mt19937_64& dice) {
    return statistics::normalQuantile(even(dice));
}

// 2,000 accessions × 10 years × 11 blocks of which a tenth of the plots is missing.
TrialTable largeTrial() {
    std::mt19937_64 dice(20);
    constexpr int kAccessions = 2000;
    constexpr int kYears = 10;
    constexpr int kBlocks = 11;
    std::vector<double> ofBlock(kYears * kBlocks);
    for (double& value : ofBlock) {
        value = std::sqrt(0.1) * normal(dice);
    }
    std::vector<std::string> gen;
    std::vector<std::string> year;
    std::vector<std::string> block;
    TrialTable table;
    for (int g = 0; g < kAccessions; ++g) {
        const double own = std::sqrt(0.8) * normal(dice);
        for (int y = 0; y < kYears; ++y) {
            const double both = std::sqrt(0.4) * normal(dice);
            for (int b = 0; b < kBlocks; ++b) {
                if (even(dice) < 1.0 / 11) {
                    continue;
                }
                const double value = 6 + 0.2 * y + own + both +
                                     ofBlock[static_cast<std::size_t>(y * kBlocks + b)] +
                                     std::sqrt(1.2) * normal(dice);
                table.response.push_back(std::round(value * 1000) / 1000);
                gen.push_back("G" + std::to_string(10000 + g));
                year.push_back("Y" + std::to_string(2010 + y));
                block.push_back("B" + std::to_string(10 + b));
            }
        }
    }
    table.factors = {makeFactor("gen", gen), makeFactor("year", year), makeFactor("block", block)};
    return table;
}

void write(const TrialTable& table, const std::string& path) {
    std::ofstream out(path);
    out << "gen,year,block,y\n";
    for (std::size_t row = 0; row < table.rows(); ++row) {
        for (const Factor& factor : table.factors) {
            out << factor.levels[factor.of[row]] << ',';
        }
        out << table.response[row] << '\n';
    }
}

// A small table that R wrote: y is the response, x a number, all else factors.
TrialTable read(const std::string& path) {
    std::ifstream in(path);
    std::ostringstream text;
    text << in.rdbuf();
    const auto csv = report::readCsv(text.str());
    must(csv.ok(), "a table that R wrote");
    TrialTable table;
    for (std::size_t column = 0; column < csv->header.size(); ++column) {
        std::vector<std::string> cells;
        std::vector<double> numbers;
        for (const report::CsvRow& row : csv->rows) {
            const std::string& cell = row.cells[column];
            cells.push_back(cell);
            double value = 0;
            std::from_chars(cell.data(), cell.data() + cell.size(), value);
            numbers.push_back(value);
        }
        if (csv->header[column] == "y") {
            table.response = numbers;
        } else if (csv->header[column] == "x") {
            table.covariates.push_back({"x", numbers});
        } else {
            table.factors.push_back(makeFactor(csv->header[column], cells));
        }
    }
    return table;
}

// What lme4 said of one table.
struct Other {
    double seconds = 0;
    double deviance = 0;
    std::vector<double> variances; // in ascending order
};

std::map<std::string, Other> fitsOfLme4(const std::string& folder) {
    std::map<std::string, Other> fits;
    const std::string script = std::string(BULLACE_SOURCE) + "/tests/work_bench/against_lme4.R";
    const std::string command = "Rscript '" + script + "' '" + folder + "' 2>/dev/null";
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return fits;
    }
    std::string text;
    char part[4096];
    while (const std::size_t n = std::fread(part, 1, sizeof part, pipe)) {
        text.append(part, n);
    }
    pclose(pipe);
    std::istringstream lines(text);
    std::string line;
    while (std::getline(lines, line)) {
        std::istringstream words(line);
        std::string name;
        Other other;
        words >> name >> other.seconds >> other.deviance;
        std::string variance;
        while (words >> variance) {
            other.variances.push_back(
                std::strtod(variance.substr(variance.rfind('|') + 1).c_str(), nullptr));
        }
        std::ranges::sort(other.variances);
        fits.emplace(name, std::move(other));
    }
    return fits;
}

constexpr MixedOptions kPlain{{}, false, false, true};

// The greatest relative difference of the variances and covariances, and of the deviance.
double differenceOf(const MixedFit& fit, const Other& other) {
    std::vector<double> variances;
    for (const VarianceComponent& component : fit.variances) {
        variances.push_back(component.value);
    }
    std::ranges::sort(variances);
    must(variances.size() == other.variances.size(), "as many variances as lme4");
    double most = std::abs(-2 * fit.logLikelihood - other.deviance) / std::abs(other.deviance);
    for (std::size_t i = 0; i < variances.size(); ++i) {
        most = std::max(most,
                        std::abs(variances[i] - other.variances[i]) / std::abs(other.variances[i]));
    }
    return most;
}

void compare(const std::string& name,
             const std::string& words,
             const TrialTable& table,
             const MixedSpec& spec,
             const std::map<std::string, Other>& others) {
    const bool isLarge = name == "big";
    const int times = isLarge ? 3 : 200;
    std::vector<double> seconds;
    MixedFit fit;
    for (int time = 0; time < times; ++time) {
        seconds.push_back(secondsOf([&] {
            auto done = fitMixed(table, spec, kPlain);
            must(done.ok() && done->hasConverged, words);
            fit = std::move(*done);
        }));
    }
    const double median = percentile(seconds, 0.5);
    tell(words, median * 1000, "ms", "none of its own", true);
    const auto other = others.find(name);
    if (other == others.end()) {
        return;
    }
    const double faster = other->second.seconds / median;
    const double wanted = isLarge ? 10 : 50;
    tell(words + ": lme4's time over ours",
         faster,
         "times",
         "at least " + std::to_string(static_cast<int>(wanted)),
         faster >= wanted);
    const double difference = differenceOf(fit, other->second);
    tell(words + ": greatest relative difference to lme4's estimates",
         difference,
         "",
         "1e-6",
         difference < 1e-6);
}

void benchAgainstLme4() {
    const Folder folder;
    const TrialTable big = largeTrial();
    write(big, folder.file("big.csv"));
    const auto others = fitsOfLme4(folder.file("."));
    if (others.empty()) {
        tell("lme4 is not installed (r-cran-lme4): nothing is compared", 0, "", "none", true);
    }
    MixedSpec large;
    large.fixed = {{"year"}};
    large.random = {{{"gen"}}, {{"gen", "year"}}, {{"year", "block"}}};
    compare("big", "REML with predictions and their errors, 200,000 records", big, large, others);
    if (others.empty()) {
        return;
    }
    MixedSpec sleep;
    sleep.fixed = {{"x"}};
    sleep.random.push_back({{"subject"}, {"x"}, true, {}, {}});
    compare("sleepstudy", "sleepstudy", read(folder.file("sleepstudy.csv")), sleep, others);
    MixedSpec penicillin;
    penicillin.random = {{{"plate"}}, {{"sample"}}};
    compare("Penicillin", "Penicillin", read(folder.file("Penicillin.csv")), penicillin, others);
    MixedSpec oats;
    oats.fixed = {{"variety"}, {"nitrogen"}, {"variety", "nitrogen"}};
    oats.random = {{{"block"}}, {{"block", "variety"}}};
    compare("Oats", "Oats", read(folder.file("Oats.csv")), oats, others);
}

// Ten generations of crosses among the best and their families, each individual with two records.
void benchBreedingValues() {
    std::mt19937_64 dice(21);
    constexpr std::size_t kIndividuals = 10000;
    constexpr std::size_t kFounders = 200;
    std::vector<breeding::PedigreeLine> lines;
    std::vector<double> value;
    std::vector<std::string> id;
    std::vector<std::string> year;
    TrialTable table;
    const auto nameOf = [](std::size_t i) { return "V" + std::to_string(100000 + i); };
    for (std::size_t i = 0; i < kIndividuals; ++i) {
        breeding::PedigreeLine line{nameOf(i), "", "", i + 1};
        double own = normal(dice);
        if (i >= kFounders) {
            // A family has twenty members; its parents come from the fifth before it.
            const std::size_t family = i / 20;
            const std::size_t from = family * 20 - std::min(family * 20, i / 5 + kFounders);
            std::mt19937_64 ofFamily(family);
            const std::size_t mother = from + ofFamily() % (family * 20 - from);
            const std::size_t father = from + ofFamily() % (family * 20 - from);
            line.mother = nameOf(mother);
            line.father = nameOf(father);
            own = (value[mother] + value[father]) / 2 + std::sqrt(0.5) * normal(dice);
        }
        lines.push_back(line);
        value.push_back(own);
        for (int record = 0; record < 2; ++record) {
            table.response.push_back(10 + own + 0.3 * record + normal(dice));
            id.push_back(line.id);
            year.push_back(record == 0 ? "2024" : "2025");
        }
    }
    table.factors = {makeFactor("vine", id), makeFactor("year", year)};
    const auto pedigree = breeding::makePedigree(lines);
    must(pedigree.ok(), "a pedigree");
    MixedSpec spec;
    spec.fixed = {{"year"}};
    int evaluations = 0;
    const double seconds = secondsOf([&] {
        spec.random = {{{"vine"}, {}, true, breeding::relatedThrough(*pedigree), "breeding value"},
                       {{"vine"}, {}, true, {}, "vine"}};
        const auto fit = fitMixed(table, spec, kPlain);
        must(fit.ok() && fit->hasConverged, "breeding values");
        evaluations = fit->evaluations;
    });
    tell("REML through a pedigree, 10,000 individuals with two records each, PEV of all",
         seconds,
         "s",
         "under 10 s",
         seconds < 10,
         "\"evaluations\":" + std::to_string(evaluations));
}

} // namespace

void benchMixed() {
    benchAgainstLme4();
    benchBreedingValues();
}

} // namespace bullace::bench
