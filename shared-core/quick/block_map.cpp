// What a block map tells: its steps, its counts and its words.
#include "quick/block_map.hpp"

#include "core/report/ticks.hpp"
#include "quick/block_map_layout.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bullace::quick {

namespace {

constexpr std::size_t kMostSteps = 7;

class BlockMap { // the context of its words
    Q_DECLARE_TR_FUNCTIONS(BlockMap)

public:
    static QString stateWords(BlockMapCell::State state) {
        switch (state) {
        case BlockMapCell::Missing:
            return tr("Missing");
        case BlockMapCell::Dead:
            return tr("Dead");
        case BlockMapCell::NotObserved:
            return tr("Not observed");
        case BlockMapCell::Open:
            return tr("Open: two notes do not agree");
        case BlockMapCell::Empty:
            return tr("Nothing planted");
        case BlockMapCell::Value:
            break;
        }
        return tr("With a value");
    }
    static QString other() { return tr("Another value"); }
    static QString marked() { return tr("Finding"); }
    static QString between(const QString& from, const QString& to) {
        //: A step of the legend: from one number to another.
        return tr("%1 to %2").arg(from, to);
    }
    static QString below(const QString& to) { return tr("up to %1").arg(to); }
    static QString above(const QString& from) { return tr("over %1").arg(from); }
    static QString noDifference(const QString& within) {
        return tr("no more than %1 apart").arg(within);
    }
    //: What the fills of the map tell, and its unit in brackets.
    static QString titled(const QString& title, const QString& unit) {
        return tr("%1 (%2)").arg(title, unit);
    }
    static QString rows(int count) { return tr("%n row(s)", nullptr, count); }
    static QString vines(int count) { return tr("%n vine(s)", nullptr, count); }
    static QString counted(const QString& words, int count) {
        return tr("%1: %2").arg(words, QLocale().toString(count));
    }
    //: North, one letter beside an arrow on a map.
    static QString north() { return tr("N"); }
    static QString isMarked() { return tr("marked"); }
};

QString written(double value, int decimals) {
    return QLocale().toString(value, 'f', decimals);
}

} // namespace

std::vector<BlockMapStep> orderedSteps(double least, double greatest, std::size_t most) {
    if (!(greatest > least)) {
        return {{QLocale().toString(least), least}};
    }
    const auto wanted = std::clamp<std::size_t>(most, 1, kMostSteps);
    auto ticks = report::ticksAround(least, greatest, static_cast<int>(wanted));
    for (int fewer = static_cast<int>(wanted); ticks.at.size() > wanted + 1 && fewer > 1;) {
        ticks = report::ticksAround(least, greatest, --fewer);
    }
    std::vector<BlockMapStep> steps;
    for (std::size_t i = 1; i < ticks.at.size(); ++i) {
        steps.push_back({BlockMap::between(written(ticks.at[i - 1], ticks.decimals),
                                           written(ticks.at[i], ticks.decimals)),
                         ticks.at[i]});
    }
    return steps;
}

std::vector<BlockMapStep> divergingSteps(double greatestDifference) {
    const double step = report::roundStep(std::max(std::abs(greatestDifference), 1e-6), 7);
    const int decimals = std::max(0, -static_cast<int>(std::floor(std::log10(step / 2) + 1e-9)));
    const auto text = [&](double value) {
        const QChar sign = value < 0 ? QChar(0x2212) : QChar(u'+');
        return sign + written(std::abs(value), decimals);
    };
    std::vector<BlockMapStep> steps;
    steps.push_back({BlockMap::below(text(-2.5 * step)), -2.5 * step});
    for (int i = -2; i <= 2; ++i) {
        const double from = (i - 0.5) * step;
        const double to = (i + 0.5) * step;
        steps.push_back({i == 0 ? BlockMap::noDifference(written(to, decimals))
                                : BlockMap::between(text(from), text(to)),
                         to});
    }
    steps.push_back({BlockMap::above(text(2.5 * step)), 3.5 * step});
    return steps;
}

std::optional<std::size_t> stepOf(const BlockMapScale& scale, const std::optional<double>& value) {
    if (scale.kind == BlockMapScale::Plain || !value || std::isnan(*value) || scale.steps.empty()) {
        return std::nullopt;
    }
    if (scale.kind == BlockMapScale::Classes) {
        const bool isIn = *value >= 0 && *value < static_cast<double>(scale.steps.size());
        return isIn ? std::optional(static_cast<std::size_t>(*value)) : std::nullopt;
    }
    if (scale.kind == BlockMapScale::Diverging && *value < 0) { // bounds belong to equal steps
        const auto mirrored = stepOf(scale, -*value);
        return mirrored ? std::optional(scale.steps.size() - 1 - *mirrored) : std::nullopt;
    }
    const auto at = std::find_if(scale.steps.begin(),
                                 scale.steps.end() - 1,
                                 [&](const BlockMapStep& step) { return *value <= step.upTo; });
    return static_cast<std::size_t>(at - scale.steps.begin());
}

BlockMapCounts countsOf(const BlockMapPicture& picture) {
    BlockMapCounts counts;
    counts.steps.resize(picture.scale.steps.size());
    for (const BlockMapRow& row : picture.rows) {
        for (const BlockMapCell& cell : row.cells) {
            ++counts.cells;
            ++counts.states[cell.state];
            counts.marked += cell.isMarked ? 1 : 0;
            const auto step = cell.state == BlockMapCell::Value ? stepOf(picture.scale, cell.value)
                                                                : std::nullopt;
            if (step) {
                ++counts.steps[*step];
            }
        }
    }
    return counts;
}

QString legendTitle(const BlockMapScale& scale) {
    return scale.unit.isEmpty() ? scale.title : BlockMap::titled(scale.title, scale.unit);
}

QString northWord() {
    return BlockMap::north();
}

// A value of the step. A bound belongs to the step that lies nearer to no difference, so below it a
// step's own bound is its mirror's.
static double sampleOf(const BlockMapScale& scale, std::size_t step) {
    if (scale.kind == BlockMapScale::Classes) {
        return static_cast<double>(step);
    }
    const std::size_t mirror = scale.steps.size() - 1 - step;
    const bool isBelow = scale.kind == BlockMapScale::Diverging && step < mirror;
    return isBelow ? -scale.steps[mirror].upTo : scale.steps[step].upTo;
}

std::vector<BlockMapLegendLine> legendOf(const BlockMapPicture& picture) {
    const BlockMapCounts counts = countsOf(picture);
    std::vector<BlockMapLegendLine> lines;
    for (std::size_t i = 0; picture.scale.kind != BlockMapScale::Plain && i < counts.steps.size();
         ++i) {
        BlockMapCell sample;
        sample.state = BlockMapCell::Value;
        sample.value = sampleOf(picture.scale, i);
        lines.push_back({sample, picture.scale.steps[i].label, counts.steps[i]});
    }
    for (const auto state : {BlockMapCell::Value,
                             BlockMapCell::NotObserved,
                             BlockMapCell::Open,
                             BlockMapCell::Dead,
                             BlockMapCell::Missing,
                             BlockMapCell::Empty}) {
        const int told = state == BlockMapCell::Value
                             ? std::accumulate(counts.steps.begin(), counts.steps.end(), 0)
                             : 0;
        const int count = counts.states[state] - told;
        if (count > 0 || state == BlockMapCell::NotObserved) {
            BlockMapCell sample;
            sample.state = state;
            lines.push_back(
                {sample, told > 0 ? BlockMap::other() : BlockMap::stateWords(state), count});
        }
    }
    if (counts.marked > 0) {
        BlockMapCell sample;
        sample.state = BlockMapCell::Value;
        sample.isMarked = true;
        lines.push_back({sample, BlockMap::marked(), counts.marked});
    }
    return lines;
}

QString blockMapSummary(const BlockMapPicture& picture) {
    QStringList sentences;
    const auto add = [&](const QString& words) {
        if (!words.isEmpty()) {
            sentences << words + QLatin1Char('.');
        }
    };
    add(picture.title);
    for (const QString& note : picture.notes) {
        add(note);
    }
    add(BlockMap::rows(static_cast<int>(picture.rows.size())));
    add(BlockMap::vines(countsOf(picture).cells));
    add(legendTitle(picture.scale));
    for (const BlockMapLegendLine& line : legendOf(picture)) {
        add(BlockMap::counted(line.words, line.count));
    }
    return sentences.join(QLatin1Char(' '));
}

QString blockMapWords(const BlockMapPicture& picture, const BlockMapPlace& place) {
    const BlockMapCell& cell = picture.rows[place.row].cells[place.cell];
    const bool hasText = cell.state == BlockMapCell::Value && !cell.text.isEmpty();
    QString words = BlockMap::tr("%1: %2").arg(
        placeWords(toText(cell.position)), hasText ? cell.text : BlockMap::stateWords(cell.state));
    return cell.isMarked ? words + QStringLiteral(", ") + BlockMap::isMarked() : words;
}

} // namespace bullace::quick
