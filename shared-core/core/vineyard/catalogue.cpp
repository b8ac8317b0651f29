#include "core/vineyard/catalogue.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"

#include <algorithm>

namespace bullace::vineyard {

using journal::itemsOf;
using journal::memberOf;
using journal::Subject;
using journal::SubjectForm;
using journal::textOf;

namespace {

std::string textOr(BytesView value, std::string_view other = {}) {
    return std::string(textOf(value).value_or(other));
}

std::optional<CivilDate> dateOf(BytesView value) {
    return readDate(textOf(value).value_or(""));
}

std::vector<Row> rowsOf(BytesView value) {
    std::vector<Row> rows;
    for (const BytesView item : itemsOf(value).value_or(std::vector<BytesView>{})) {
        const auto pair = itemsOf(item);
        if (!pair || pair->size() != 2) {
            continue;
        }
        const auto number = journal::wholeNumberOf((*pair)[0]);
        const auto vines = journal::wholeNumberOf((*pair)[1]);
        constexpr std::int64_t kMost = kGreatestNumber;
        if (number && vines && *number > 0 && *number <= kMost && *vines > 0 && *vines <= kMost) {
            rows.push_back({static_cast<unsigned>(*number), static_cast<unsigned>(*vines)});
        }
    }
    std::sort(
        rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.number < b.number; });
    return rows;
}

std::vector<ReplicateRun> replicatesOf(BytesView value) {
    std::vector<ReplicateRun> runs;
    for (const BytesView item : itemsOf(value).value_or(std::vector<BytesView>{})) {
        const auto parts = itemsOf(item);
        if (!parts || parts->size() != 3) {
            continue;
        }
        const auto first = journal::textOf((*parts)[0]);
        const auto last = journal::textOf((*parts)[1]);
        const auto replicate = journal::wholeNumberOf((*parts)[2]);
        constexpr std::int64_t kMost = kGreatestNumber;
        if (first && last && replicate && *replicate > 0 && *replicate <= kMost) {
            runs.push_back(
                {std::string(*first), std::string(*last), static_cast<unsigned>(*replicate)});
        }
    }
    return runs;
}

// "label-07-14" of block B2 is the label of B2-07-14.
std::string labelledPosition(std::string_view block, std::string_view field) {
    return std::string(block) + "-" + std::string(field.substr(std::string_view("label-").size()));
}

std::string rowKey(std::string_view position) {
    return std::string(position.substr(0, position.rfind('-')));
}

} // namespace

std::span<const std::string_view> Catalogue::Reader::parts() {
    static constexpr std::string_view kParts[] = {
        "accession", "block", "cross", "descriptor", "lot", "person", "planting", "round"};
    return kParts;
}

void Catalogue::Reader::take(std::string_view path, BytesView value) {
    const Subject subject = journal::readSubject(path);
    switch (subject.form) {
    case SubjectForm::Block:
        takeBlock(subject, value);
        break;
    case SubjectForm::Planting:
        takePlanting(subject, value);
        break;
    case SubjectForm::Round:
        takeRound(subject, value);
        break;
    case SubjectForm::Person:
        takePerson(subject, value);
        break;
    case SubjectForm::Accession:
        takeAccession(subject, value);
        break;
    case SubjectForm::Cross:
        takeCross(subject, value);
        break;
    case SubjectForm::Lot:
        takeLot(subject, value);
        break;
    case SubjectForm::Descriptor:
        fields_[std::string(subject.id)][std::string(subject.field)] = Bytes(value);
        break;
    default:
        break;
    }
}

void Catalogue::Reader::finish() {
    finishBlocks();
    for (auto& [id, round] : rounds_) {
        into_.rounds_.push_back(std::move(round));
    }
    for (auto& [id, cross] : crosses_) {
        into_.crosses_.push_back(std::move(cross));
    }
    for (auto& [code, person] : people_) {
        if (!person.name.empty()) {
            into_.people_.push_back(std::move(person));
        }
    }
    for (auto& [id, lot] : lots_) {
        into_.lots_.push_back(std::move(lot));
    }
    finishDescriptors();
}

void Catalogue::Reader::takeBlock(const Subject& subject, BytesView value) {
    Block& block = blocks_[std::string(subject.id)];
    block.code = subject.id;
    if (subject.field == "name") {
        block.name = textOr(value);
    } else if (subject.field == "rows") {
        block.rows = rowsOf(value);
    } else if (subject.field == "replicates") {
        block.replicates = replicatesOf(value);
    } else if (subject.field == "closed-until") {
        block.closedUntil = dateOf(value);
    } else if (subject.field == "no-tasting-until") {
        block.noTastingUntil = dateOf(value);
    } else if (subject.field.starts_with("renumber-")) {
        takeRenumbering(subject.field.substr(std::string_view("renumber-").size()), value);
    } else if (subject.field.starts_with("label-")) {
        into_.labels_[textOr(value)] = labelledPosition(subject.id, subject.field);
    }
}

void Catalogue::Reader::takeRenumbering(std::string_view date, BytesView value) {
    const auto from = readDate(date);
    CborReader map(value);
    std::size_t count = 0;
    if (!from || !map.map(count)) {
        return;
    }
    Renumbering renumbering{*from, {}};
    for (std::size_t i = 0; i < count; ++i) {
        std::string_view old;
        std::string_view fresh;
        if (!map.text(old) || !map.text(fresh)) {
            return;
        }
        renumbering.oldToNew.emplace_back(old, fresh);
    }
    renumberings_.push_back(std::move(renumbering));
}

void Catalogue::Reader::takePlanting(const Subject& subject, BytesView value) {
    const auto accession = memberOf(value, "accession");
    const auto from = readDate(subject.date);
    if (!accession || !from) {
        return;
    }
    const auto until = memberOf(value, "until");
    plantings_.push_back({std::string(subject.id),
                          *from,
                          textOr(*accession),
                          until ? dateOf(*until) : std::nullopt});
    if (subject.position && subject.position->letter != 0) {
        into_.between_[rowKey(subject.id)].emplace_back(subject.id);
    }
}

void Catalogue::Reader::takeRound(const Subject& subject, BytesView value) {
    walk::Round& round = rounds_[std::string(subject.id)];
    round.id = subject.id;
    // A field of another shape is passed over, as in the rulebook; the rest of the round holds.
    static_cast<void>(walk::setField(round, subject.field, value));
}

void Catalogue::Reader::takeAccession(const Subject& subject, BytesView value) {
    Accession& accession = into_.accessions_[std::string(subject.id)];
    accession.id = subject.id;
    if (subject.field == "name") {
        accession.name = textOr(value);
    } else if (subject.field == "number") {
        accession.number = textOr(value);
    } else if (subject.field == "status") {
        accession.status = textOr(value);
    } else if (subject.field == "flower-sex") {
        const auto code = journal::wholeNumberOf(value);
        accession.flowerSex = code ? std::optional(static_cast<int>(*code)) : std::nullopt;
    }
}

void Catalogue::Reader::takePerson(const Subject& subject, BytesView value) {
    Person& person = people_[std::string(subject.id)];
    person.code = subject.id;
    if (subject.field == "name") {
        person.name = textOr(value, subject.id);
    } else if (subject.field == "number") {
        person.number = textOr(value);
    }
}

void Catalogue::Reader::takeCross(const Subject& subject, BytesView value) {
    Cross& cross = crosses_[std::string(subject.id)];
    cross.id = subject.id;
    if (subject.field == "number") {
        cross.number = textOr(value);
    } else if (subject.field == "mother") {
        cross.mother = textOr(value);
    } else if (subject.field == "father") {
        cross.father = textOr(value);
    } else if (subject.field == "mother-at") {
        cross.motherAt = textOr(value);
    } else if (subject.field == "pollen-lot") {
        cross.pollenLot = textOr(value);
    } else if (subject.field == "closed") {
        cross.isClosed = !journal::isNullValue(value) && value != journal::booleanValue(false);
    }
}

void Catalogue::Reader::takeLot(const Subject& subject, BytesView value) {
    Lot& lot = lots_[std::string(subject.id)];
    lot.id = subject.id;
    if (subject.field == "kind") {
        lot.kind = textOr(value);
    } else if (subject.field == "from") {
        lot.from = textOr(value);
    } else if (subject.field == "label") {
        lot.label = textOr(value);
    } else if (subject.field == "number") {
        lot.number = textOr(value);
    }
}

void Catalogue::Reader::finishBlocks() {
    for (auto& [code, block] : blocks_) {
        into_.blocks_.push_back(std::move(block));
    }
    Result<Renumberings> renumberings = Renumberings::of(renumberings_);
    // Two vines that would share a place: the office has to put that right; until then every
    // vine is called as it was noted.
    into_.plantings_ =
        Plantings(std::move(plantings_), renumberings ? std::move(*renumberings) : Renumberings{});
    for (auto& [row, positions] : into_.between_) {
        std::sort(positions.begin(), positions.end());
        positions.erase(std::unique(positions.begin(), positions.end()), positions.end());
    }
}

void Catalogue::Reader::finishDescriptors() {
    std::vector<std::string> order;
    for (const descriptors::Descriptor& known : descriptors::builtInDescriptors()) {
        order.emplace_back(known.code);
        into_.known_[order.back()].known = known;
    }
    for (const auto& [code, fields] : fields_) {
        if (into_.known_.count(code) == 0) {
            order.push_back(code);
            into_.known_[code].known.code = keepText(code);
            into_.known_[code].known.title = keepText(code);
        }
        for (const auto& [field, value] : fields) {
            setField(into_.known_[code], field, value);
        }
    }
    for (const std::string& code : order) {
        if (off_.count(code) == 0) {
            into_.asked_.push_back(&into_.known_[code]);
        } else {
            into_.known_.erase(code);
        }
    }
}

void Catalogue::Reader::setField(Asked& asked, const std::string& field, BytesView value) {
    descriptors::Descriptor& known = asked.known;
    if (field == "title") {
        known.title = keepText(textOr(value, known.title));
    } else if (field == "kind") {
        const auto kind = descriptors::readKindWord(textOr(value));
        known.kind = kind.value_or(known.kind);
        asked.unknownKind = kind ? "" : textOr(value, "?");
    } else if (field == "unit") {
        known.unit = keepText(textOr(value));
    } else if (field == "range") {
        setRange(known, value);
    } else if (field == "decimals") {
        known.decimals = static_cast<int>(
            std::clamp<std::int64_t>(journal::wholeNumberOf(value).value_or(0), 0, 6));
    } else if (field == "sampled") {
        known.isSampled = value == journal::booleanValue(true);
    } else if (field == "codes") {
        setCodes(known, value);
    } else if (field == "off" && value == journal::booleanValue(true)) {
        off_.insert({std::string(known.code), true});
    }
}

void Catalogue::Reader::setRange(descriptors::Descriptor& known, BytesView value) {
    const auto pair = itemsOf(value);
    if (!pair || pair->size() != 2) {
        return;
    }
    const auto least = journal::numberOf((*pair)[0]);
    const auto greatest = journal::numberOf((*pair)[1]);
    if (least && greatest && *least <= *greatest) {
        known.range = descriptors::Range{*least, *greatest};
    }
}

void Catalogue::Reader::setCodes(descriptors::Descriptor& known, BytesView value) {
    std::vector<std::string_view>& codes = into_.words_.emplace_back();
    for (const BytesView item : itemsOf(value).value_or(std::vector<BytesView>{})) {
        const auto text = textOf(item);
        codes.push_back(keepText(text ? std::string(*text) : journal::valueToJson(item)));
    }
    known.codes = codes;
}

std::string_view Catalogue::Reader::keepText(std::string text) {
    return into_.texts_.emplace_back(std::move(text));
}

const Block* Catalogue::block(std::string_view code) const {
    const auto found = std::find_if(
        blocks_.begin(), blocks_.end(), [code](const auto& block) { return block.code == code; });
    return found == blocks_.end() ? nullptr : &*found;
}

std::vector<std::string> Catalogue::between(std::string_view block, unsigned row) const {
    const auto found = between_.find(rowKey(writePosition({block, row, 1, 0})));
    return found == between_.end() ? std::vector<std::string>{} : found->second;
}

const walk::Round* Catalogue::round(std::string_view id) const {
    const auto found = std::find_if(
        rounds_.begin(), rounds_.end(), [id](const auto& round) { return round.id == id; });
    return found == rounds_.end() ? nullptr : &*found;
}

std::vector<std::string> Catalogue::placesOf(std::string_view block, const Row& row) const {
    std::vector<std::string> places = between(block, row.number);
    for (unsigned vine = 1; vine <= row.vines; ++vine) {
        places.push_back(writePosition({std::string(block), row.number, vine, 0}));
    }
    std::sort(places.begin(), places.end(), [](const std::string& a, const std::string& b) {
        return compareAlongRows(*readPosition(a), *readPosition(b)) < 0;
    });
    return places;
}

std::string Catalogue::accessionWords(std::string_view id) const {
    const auto found = accessions_.find(id);
    if (found == accessions_.end()) {
        return std::string(id);
    }
    const Accession& one = found->second;
    const std::string& number = one.number.empty() ? one.id : one.number;
    return one.name.empty() ? number : number + " " + one.name;
}

const Asked* Catalogue::descriptor(std::string_view code) const {
    const auto found = known_.find(code);
    return found == known_.end() ? nullptr : &found->second;
}

std::optional<std::string> Catalogue::labelled(std::string_view code) const {
    const auto found = labels_.find(code);
    return found == labels_.end() ? std::nullopt : std::optional(found->second);
}

std::string Catalogue::accessionAt(std::string_view position, CivilDate date) const {
    const Planting* planting = plantings_.at(position, date);
    return planting == nullptr ? std::string{} : planting->accession;
}

void Catalogue::addOwnBlock(Block block) {
    if (this->block(block.code) == nullptr) {
        blocks_.push_back(std::move(block));
    }
}

} // namespace bullace::vineyard
