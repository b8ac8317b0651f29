// `bullace work colour`: the pigments of samples, or how fast juice loses its colour in storage.
#include "console/work.hpp"

#include "core/fruit/colour_decay.hpp"
#include "core/fruit/juice_colour.hpp"

#include <CLI/CLI.hpp>
#include <map>
#include <memory>

namespace bullace::console {

namespace {

using fruit::kPigments;
using fruit::Pigment;

// Where the file has them; each is asked for by its name.
struct StorageColumns {
    std::size_t day = 0;
    std::size_t absorbance = 0;
    std::optional<std::size_t> accession{}, nm{}, dilution{}, pathMm{}, ph{}, storageC{};
};

Result<StorageColumns> storageColumns(const WorkFile& file) {
    const auto day = file.column("day");
    const auto absorbance = file.column("absorbance");
    if (!day || !absorbance) {
        return day ? absorbance.error() : day.error();
    }
    StorageColumns columns{*day, *absorbance, {}, {}, {}, {}, {}, {}};
    columns.accession = file.columnIfThere("accession");
    columns.nm = file.columnIfThere("nm");
    columns.dilution = file.columnIfThere("dilution");
    columns.pathMm = file.columnIfThere("path_mm");
    columns.ph = file.columnIfThere("ph");
    columns.storageC = file.columnIfThere("storage_c");
    return columns;
}

// A cell of a column that may not be there; the error of a cell that is no number.
Status read(const WorkFile& file,
            std::size_t row,
            const std::optional<std::size_t>& column,
            std::optional<double>& into) {
    if (!column) {
        return {};
    }
    const auto value = file.numberIfThere(row, *column);
    if (!value) {
        return value.error();
    }
    into = *value;
    return {};
}

Result<fruit::AbsorbanceReading>
readingOf(const WorkFile& file, const StorageColumns& columns, std::size_t row) {
    const auto day = file.number(row, columns.day);
    const auto absorbance = file.number(row, columns.absorbance);
    if (!day || !absorbance) {
        return day ? absorbance.error() : day.error();
    }
    fruit::AbsorbanceReading reading{
        columns.accession ? file.text(row, *columns.accession) : "", {}, *day, *absorbance};
    std::optional<double> nm;
    std::optional<double> dilution;
    std::optional<double> pathMm;
    for (const Status& status : {read(file, row, columns.nm, nm),
                                 read(file, row, columns.dilution, dilution),
                                 read(file, row, columns.pathMm, pathMm),
                                 read(file, row, columns.ph, reading.conditions.ph),
                                 read(file, row, columns.storageC, reading.conditions.storageC)}) {
        if (!status) {
            return status.error();
        }
    }
    reading.conditions.nm = nm.value_or(reading.conditions.nm);
    reading.conditions.dilution = dilution.value_or(reading.conditions.dilution);
    reading.conditions.pathMm = pathMm.value_or(reading.conditions.pathMm);
    if (*day < 0) {
        return file.wrong(row, columns.day, "a day of storage is not below 0");
    }
    if (!(reading.conditions.dilution > 0) || !(reading.conditions.pathMm > 0)) {
        return file.wrongLine(row, "Dilution and path are above 0.");
    }
    return reading;
}

void describe(const fruit::ReadingConditions& conditions, Document& into) {
    into.number("nm", conditions.nm).number("dilution", conditions.dilution);
    into.number("path, mm", conditions.pathMm).number("pH", conditions.ph);
    into.number("storage, °C", conditions.storageC);
}

void describe(const fruit::ColourComparison& comparison, Document& into) {
    into.text("method", "decay of the first order, least squares of ln A");
    DocumentList& decays = into.list("decays");
    for (const fruit::ColourDecay& decay : comparison.decays) {
        Document& of = decays.add();
        of.text("accession", decay.accession);
        describe(decay.conditions, of);
        of.count("readings", decay.readings).count("left out", decay.leftOut);
        of.estimate("absorbance at the start", decay.start);
        of.estimate("decay per day", decay.perDay).estimate("half-life, days", decay.halfLifeDays);
        of.number("residual standard deviation of ln A", decay.residualSd);
        of.remarks(decay.remarks);
    }
    DocumentList& differences = into.list("differences");
    for (const fruit::DecayDifference& difference : comparison.differences) {
        Document& of = differences.add();
        of.text("of", difference.one).text("minus", difference.other);
        describe(difference.conditions, of);
        of.estimate("decay per day", difference.perDay);
        of.number("p", difference.p).number("p after Holm", difference.pHolm);
    }
    into.remarks(comparison.remarks);
}

Status tellStorage(const WorkFile& file, Document& document) {
    const auto columns = storageColumns(file);
    if (!columns) {
        return columns.error();
    }
    std::vector<fruit::AbsorbanceReading> readings;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        const auto reading = readingOf(file, *columns, row);
        if (!reading) {
            return reading.error();
        }
        readings.push_back(*reading);
    }
    const auto comparison = fruit::colourDecay(readings);
    if (!comparison) {
        return comparison.error();
    }
    describe(*comparison, document.object("storage"));
    return {};
}

std::string_view nameOf(fruit::AgainstGuide guide) {
    switch (guide) {
    case fruit::AgainstGuide::Reaches:
        return "reached";
    case fruit::AgainstGuide::Below:
        return "not reached";
    case fruit::AgainstGuide::Undecided:
        return "undecided";
    }
    return "";
}

void describe(const fruit::PigmentProfile& profile, Document& into) {
    into.count("samples", profile.samples).count("complete", profile.complete);
    into.estimate("total, mg per 100 g", profile.totalMgPer100g);
    DocumentList& pigments = into.list("pigments");
    for (std::size_t i = 0; i < kPigments; ++i) {
        Document& of = pigments.add();
        of.text("pigment", fruit::nameOf(static_cast<Pigment>(i)));
        of.count("samples", profile.measured[i]).estimate("mg per 100 g", profile.mgPer100g[i]);
        of.estimate("percent of the total", profile.sharePercent[i]);
    }
    into.estimate("malvidin to delphinidin", profile.malvidinToDelphinidin);
    into.count("samples with both", profile.ratios);
    into.number("guide value of malvidin, mg per 100 g", fruit::kMalvidinGuide);
    if (profile.guide) {
        into.text("guide value", nameOf(*profile.guide));
    }
    into.remarks(profile.remarks);
}

using Samples = std::map<std::string, std::vector<fruit::PigmentSample>>;

Result<Samples> samplesOf(const WorkFile& file) {
    const auto accession = file.columnIfThere("accession");
    Samples samples;
    for (std::size_t row = 0; row < file.rows(); ++row) {
        fruit::PigmentSample sample;
        for (std::size_t i = 0; i < kPigments; ++i) {
            const auto column = file.columnIfThere(fruit::nameOf(static_cast<Pigment>(i)));
            if (const Status status = read(file, row, column, sample[i]); !status) {
                return status.error();
            }
            if (sample[i] && *sample[i] < 0) {
                return file.wrong(row, *column, "an amount is not below 0");
            }
        }
        samples[accession ? file.text(row, *accession) : ""].push_back(sample);
    }
    return samples;
}

Status tellPigments(const WorkFile& file, Document& document) {
    const auto samples = samplesOf(file);
    if (!samples) {
        return samples.error();
    }
    DocumentList& list = document.list("pigments");
    for (const auto& [accession, of] : *samples) {
        const auto profile = fruit::pigmentProfile(of);
        if (!profile) {
            return profile.error();
        }
        Document& into = list.add();
        into.text("accession", accession);
        describe(*profile, into);
    }
    return {};
}

int colourOf(const std::string& path, Terminal& terminal) {
    const auto file = WorkFile::read(path, terminal);
    if (!file) {
        return tellFailure(terminal.err, file.error());
    }
    bool hasPigments = false;
    for (std::size_t i = 0; i < kPigments; ++i) {
        const auto name = fruit::nameOf(static_cast<Pigment>(i));
        hasPigments = hasPigments || file->columnIfThere(name).has_value();
    }
    Document document;
    document.text("computation", "colour");
    const Status told = hasPigments ? tellPigments(*file, document) : tellStorage(*file, document);
    return told ? tell(document, terminal) : tellFailure(terminal.err, told.error());
}

} // namespace

void addColour(CLI::App& methods, Work& work) {
    auto path = std::make_shared<std::string>();
    CLI::App* command = methods.add_subcommand(
        "colour", "Pigments of samples, or how long juice holds its colour in storage");
    command->add_option("FILE", *path, "CSV; - is standard input")->required();
    command->footer(
        "Columns for storage: day, absorbance; if there, accession, nm (520), dilution (1), "
        "path_mm (10), ph, storage_c.\n"
        "Columns for pigments, mg per 100 g: delphinidin, cyanidin, petunidin, peonidin, malvidin; "
        "if there, accession.\n"
        "Example:\n  accession,day,absorbance\n  A017,0,1.21\n  A017,30,0.97\n  A017,60,0.71");
    command->callback(
        [path, &work] { work = [path](Terminal& terminal) { return colourOf(*path, terminal); }; });
}

} // namespace bullace::console
