#include "core/journal/subject.hpp"

#include "core/base/civil_date.hpp"
#include "core/base/numbers.hpp"

#include <array>
#include <utility>

namespace bullace::journal {

namespace {

constexpr std::size_t kMostParts = 5;

struct Parts {
    std::array<std::string_view, kMostParts> at;
    std::size_t count = 0; // 0 where a part is empty or there are too many
};

Parts split(std::string_view text) {
    Parts parts;
    while (parts.count < kMostParts) {
        const std::size_t slash = text.find('/');
        const std::string_view part = text.substr(0, slash);
        if (part.empty()) {
            return {};
        }
        parts.at[parts.count++] = part;
        if (slash == std::string_view::npos) {
            return parts;
        }
        text.remove_prefix(slash + 1);
    }
    return {};
}

bool isSample(std::string_view text) {
    const std::size_t comma = text.rfind(',');
    if (comma == std::string_view::npos || !readOrigin(text.substr(0, comma))) {
        return false;
    }
    const auto number = readCount(text.substr(comma + 1));
    return number && *number > 0;
}

Subject readObservation(const Parts& parts) {
    Subject subject;
    const std::string_view place = parts.at[1];
    subject.position = vineyard::readPosition(place);
    const bool isLot = place.starts_with("lot:") && place.size() > 4;
    if (parts.count < 4 || (!subject.position && !isLot) || !readDate(parts.at[2]) ||
        (parts.count == 5 && !isSample(parts.at[4]))) {
        return {};
    }
    subject.form = SubjectForm::Observation;
    subject.id = place;
    subject.date = parts.at[2];
    subject.descriptor = parts.at[3];
    subject.sample = parts.count == 5 ? parts.at[4] : std::string_view{};
    return subject;
}

Subject readPlanting(const Parts& parts) {
    Subject subject;
    subject.position = vineyard::readPosition(parts.at[1]);
    if (parts.count != 3 || !subject.position || !readDate(parts.at[2])) {
        return {};
    }
    subject.form = SubjectForm::Planting;
    subject.id = parts.at[1];
    subject.date = parts.at[2];
    return subject;
}

Subject readWeather(const Parts& parts) {
    Subject subject;
    if (parts.count != 4 || !readDate(parts.at[2])) {
        return {};
    }
    subject.form = SubjectForm::Weather;
    subject.id = parts.at[1];
    subject.date = parts.at[2];
    subject.field = parts.at[3];
    return subject;
}

Subject readFielded(SubjectForm form, const Parts& parts) {
    Subject subject;
    if (parts.count != 3 || (form == SubjectForm::Block && !vineyard::isBlockCode(parts.at[1]))) {
        return {};
    }
    constexpr std::string_view kRenumber = "renumber-";
    if (form == SubjectForm::Block && parts.at[2].starts_with(kRenumber)) {
        subject.date = parts.at[2].substr(kRenumber.size());
        if (!readDate(subject.date)) {
            return {};
        }
    }
    subject.form = form;
    subject.id = parts.at[1];
    subject.field = parts.at[2];
    return subject;
}

Subject readRulebook(const Parts& parts) {
    Subject subject;
    if (parts.count != 2 || !readCount(parts.at[1])) {
        return {};
    }
    subject.form = SubjectForm::Rulebook;
    subject.id = parts.at[1];
    return subject;
}

} // namespace

Subject readSubject(std::string_view text) {
    static constexpr std::array<std::pair<std::string_view, SubjectForm>, 7> kFielded{
        {{"accession", SubjectForm::Accession},
         {"lot", SubjectForm::Lot},
         {"cross", SubjectForm::Cross},
         {"person", SubjectForm::Person},
         {"round", SubjectForm::Round},
         {"block", SubjectForm::Block},
         {"descriptor", SubjectForm::Descriptor}}};
    const Parts parts = split(text);
    if (parts.count < 2) {
        return {};
    }
    const std::string_view first = parts.at[0];
    if (first == "obs") {
        return readObservation(parts);
    }
    if (first == "planting") {
        return readPlanting(parts);
    }
    if (first == "weather") {
        return readWeather(parts);
    }
    if (first == "rulebook") {
        return readRulebook(parts);
    }
    for (const auto& [word, form] : kFielded) {
        if (word == first) {
            return readFielded(form, parts);
        }
    }
    return {};
}

} // namespace bullace::journal
