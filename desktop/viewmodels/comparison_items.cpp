#include "desk/comparison_items.hpp"

#include "core/season/comparison_further.hpp"

#include <QCoreApplication>

namespace bullace::desk {

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(ComparisonItems)
};

using Accessions = std::span<const std::size_t>;

} // namespace

std::vector<FurtherItem> furtherItems(const season::StationNotes& notes) {
    std::vector<FurtherItem> items;
    const auto addStage = [&](std::string_view stage, const QString& key, const QString& title) {
        items.push_back({key, title, "", true, [&notes, stage](Accessions of, std::size_t to) {
                             return season::compareStage(notes, season::stageOf(stage), of, to);
                         }});
    };
    if (!season::yearsOf(notes, season::stageDescriptors()).empty()) {
        addStage(season::kFullBloom, QStringLiteral("!bloom"), Tr::tr("Full bloom"));
        addStage(season::kRipe, QStringLiteral("!ripe"), Tr::tr("Ripe"));
    }
    if (!notes.notesOf("freeze-test").records.empty()) {
        items.push_back({QStringLiteral("!cold"),
                         Tr::tr("Half of the buds dead"),
                         "°C",
                         false,
                         [&notes](Accessions of, std::size_t to) {
                             return season::compareCold(notes, of, to);
                         }});
    }
    if (!notes.notesOf("absorbance").records.empty()) {
        items.push_back({QStringLiteral("!colour"),
                         Tr::tr("Half-life of the colour"),
                         "d",
                         false,
                         [&notes](Accessions of, std::size_t to) {
                             return season::compareColour(notes, of, to);
                         }});
    }
    return items;
}

} // namespace bullace::desk
