// What a row sheet asks for, from the descriptors and the plan of the block.
#include "paper/paper_words.hpp"
#include "paper/row_sheet.hpp"

#include "core/descriptors/stages.hpp"
#include "core/vineyard/position.hpp"
#include "quick/trade_words.hpp"
#include "quick/words.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::paper {

namespace {

using descriptors::DescriptorKind;
using descriptors::PartKind;

constexpr int kDigitsUnknown = 4; // where nothing limits a number
constexpr int kMostDigits = 6;

int digitsOf(double greatest) {
    int digits = 1;
    for (double left = std::abs(greatest); left >= 10 && digits < kMostDigits; left /= 10) {
        ++digits;
    }
    return digits;
}

void setRange(RowSheetQuestion& question, double least, double greatest) {
    question.digits = std::max(digitsOf(least), digitsOf(greatest));
    question.hasSign = least < 0;
}

// Words of a list are noted by their number in it.
void setWords(RowSheetQuestion& question, std::span<const std::string_view> words) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        question.codes.push_back({QString::number(i + 1), quick::tradeWord(words[i])});
    }
    question.digits = digitsOf(static_cast<double>(words.size()));
}

void setStages(RowSheetQuestion& question, const std::vector<std::int64_t>& stages) {
    question.digits = 2;
    for (const auto& stage : descriptors::grapevineStages()) {
        const bool isOffered =
            stages.empty() || std::find(stages.begin(), stages.end(), stage.code) != stages.end();
        if (isOffered) {
            question.codes.push_back(
                {quick::stageCodeWords(stage.code), quick::tradeWord(stage.words)});
        }
    }
}

RowSheetQuestion
questionOf(const descriptors::RecordPart& part, const QString& title, int samples) {
    RowSheetQuestion question;
    question.title = PaperWords::titled(title, quick::tradeWord(part.name));
    question.samples = samples;
    question.decimals = part.kind == PartKind::Number ? part.decimals : 0;
    if (part.kind == PartKind::Id) {
        question.digits = 0;
    } else if (!part.words.empty()) {
        setWords(question, part.words);
    } else {
        setRange(question, part.range.least, part.range.greatest);
    }
    return question;
}

std::vector<RowSheetQuestion> partsOf(const vineyard::Asked& asked, int samples) {
    std::vector<RowSheetQuestion> questions;
    for (const auto& part : asked.known.parts) {
        if (part.isRequired) {
            questions.push_back(questionOf(part, quick::titleWords(asked), samples));
        }
    }
    return questions;
}

QString vineOf(const vineyard::Position& position) {
    QString vine = QString::number(position.vine);
    return position.letter == 0 ? vine : vine + QLatin1Char(position.letter);
}

} // namespace

std::vector<RowSheetQuestion>
questionsOf(const vineyard::Asked& asked, int samples, const std::vector<std::int64_t>& stages) {
    const descriptors::Descriptor& known = asked.known;
    const int repeats = std::max(1, samples);
    if (!asked.unknownKind.empty() || known.kind == DescriptorKind::Photo) {
        return {};
    }
    if (known.kind == DescriptorKind::Record) {
        return partsOf(asked, repeats);
    }
    RowSheetQuestion question;
    question.title = quick::titleWords(asked);
    question.unit = quick::tradeWord(known.unit);
    question.samples = repeats;
    question.decimals = known.decimals;
    question.digits = kDigitsUnknown;
    if (known.range) {
        setRange(question, known.range->least, known.range->greatest);
    }
    if (known.kind == DescriptorKind::Stage) {
        setStages(question, stages);
    } else if (known.kind == DescriptorKind::Category) {
        setWords(question, known.codes);
    } else if (known.kind == DescriptorKind::Code) {
        question.digits = 1;
        for (const std::string_view code : known.codes) {
            question.digits = std::max(question.digits, static_cast<int>(code.size()));
        }
    } else if (known.kind == DescriptorKind::Text) {
        question.digits = 0;
        question.samples = 1;
    }
    return {question};
}

std::vector<RowSheetVine> vinesOf(const vineyard::Catalogue& catalogue,
                                  const vineyard::Block& block,
                                  const vineyard::Row& row,
                                  CivilDate day,
                                  bool isFromLast) {
    std::vector<std::pair<vineyard::Position, bool>> places;
    bool isPlanted = false;
    for (const std::string& text : catalogue.placesOf(block.code, row)) {
        const bool stands = !catalogue.accessionAt(text, day).empty();
        isPlanted = isPlanted || stands;
        places.emplace_back(*vineyard::readPosition(text), stands);
    }
    if (isFromLast) {
        std::reverse(places.begin(), places.end());
    }
    std::vector<RowSheetVine> vines;
    for (const auto& [position, stands] : places) {
        const bool isGone = isPlanted && !stands;
        vines.push_back({vineOf(position), isGone ? PaperWords::noVine() : QString()});
    }
    return vines;
}

} // namespace bullace::paper
