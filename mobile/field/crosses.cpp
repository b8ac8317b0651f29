#include "field/crosses.hpp"

#include "core/base/numbers.hpp"
#include "core/breeding/cross_steps.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/subject.hpp"
#include "core/vineyard/label_code.hpp"
#include "store/json_reader.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace bullace::field {

using journal::memberOf;
using journal::textOf;
using journal::textValue;

namespace {

std::string textMember(BytesView map, std::string_view key) {
    const auto member = memberOf(map, key);
    return member ? std::string(textOf(*member).value_or("")) : std::string{};
}

struct Work {
    std::set<std::string, std::less<>> steps;
    std::optional<int> lastTag;
    unsigned flowers = 0;
};

void addWork(Work& work, BytesView value) {
    const std::string step = textMember(value, "step");
    work.steps.insert(step);
    const auto tag = memberOf(value, "tag");
    if (tag) {
        const auto number = journal::wholeNumberOf(*tag);
        work.lastTag = number ? std::optional(static_cast<int>(*number)) : work.lastTag;
    }
    const auto count = memberOf(value, "count");
    if (count && (step == "pollinated" || step == "re-pollinated")) {
        work.flowers += static_cast<unsigned>(journal::wholeNumberOf(*count).value_or(0));
    }
}

struct MotherVine {
    std::map<std::string, Work> crosses; // by ID
    std::optional<int> lastStage;
};

// What was done and seen this year at one vine.
Result<MotherVine> look(store::Database& database, const std::string& position, CivilDate today) {
    MotherVine vine;
    const std::string place = "obs/" + position + "/";
    const std::string year = writeDate(today).substr(0, 4);
    const Status read = database.eachStateBetween(
        place + year, place + year + "~", [&](const store::StateRow& row) {
            const journal::Subject subject = journal::readSubject(row.subject);
            const Result<Bytes> value = store::readJson(row.valueJson);
            if (row.valueJson.empty() || !value) {
                return true;
            }
            if (subject.descriptor == "cross-work") {
                addWork(vine.crosses[textMember(*value, "cross")], *value);
            } else if (subject.descriptor == "stage") {
                const auto code = journal::wholeNumberOf(*value);
                vine.lastStage = code ? std::optional(static_cast<int>(*code)) : vine.lastStage;
            }
            return true;
        });
    if (!read) {
        return read.error();
    }
    return vine;
}

std::string pollenWords(const vineyard::Catalogue& catalogue, const vineyard::Cross& cross) {
    return cross.pollenLot.empty() ? catalogue.accessionWords(cross.father) : cross.pollenLot;
}

std::optional<int> sexOf(const vineyard::Catalogue& catalogue, const std::string& accession) {
    const auto found = catalogue.accessions().find(accession);
    return found == catalogue.accessions().end() ? std::nullopt : found->second.flowerSex;
}

store::Draft
catalogDraft(const std::string& author, const std::string& subject, const std::string& text) {
    store::Draft draft;
    draft.author = author;
    draft.kind = journal::Kind::Catalog;
    draft.subject = subject;
    draft.value = textValue(text);
    return draft;
}

using Fields = std::vector<std::pair<std::string, std::string>>;

// Opens KIND/ID with those of the fields that are not empty.
Result<std::string> open(store::Database& database,
                         Pen& pen,
                         const std::string& kind,
                         const std::string& author,
                         const Fields& fields) {
    const Result<std::string> id = freshId(database, kind);
    if (!id) {
        return id.error();
    }
    std::vector<store::Draft> drafts;
    for (const auto& [field, text] : fields) {
        if (!text.empty()) {
            std::string subject = kind;
            subject.append("/").append(*id).append("/").append(field);
            drafts.push_back(catalogDraft(author.empty() ? *id : author, subject, text));
        }
    }
    const auto written = pen.write(drafts);
    if (!written) {
        return written.error();
    }
    return *id;
}

} // namespace

Result<std::vector<CrossDue>> crossesDue(store::Database& database,
                                         const vineyard::Catalogue& catalogue,
                                         CivilDate today,
                                         const std::string& position) {
    std::map<std::string, MotherVine> vines;
    std::vector<CrossDue> all;
    for (const vineyard::Cross& cross : catalogue.crosses()) {
        if (cross.isClosed || cross.motherAt.empty() ||
            (!position.empty() && cross.motherAt != position)) {
            continue;
        }
        if (vines.count(cross.motherAt) == 0) {
            Result<MotherVine> vine = look(database, cross.motherAt, today);
            if (!vine) {
                return vine.error();
            }
            vines[cross.motherAt] = std::move(*vine);
        }
        const MotherVine& vine = vines[cross.motherAt];
        const auto found = vine.crosses.find(cross.id);
        const Work work = found == vine.crosses.end() ? Work{} : found->second;
        const auto step = breeding::nextCrossStep(work.steps, sexOf(catalogue, cross.mother));
        CrossDue due;
        due.cross = &cross;
        due.position = cross.motherAt;
        due.step = step.value_or("");
        due.pollen = pollenWords(catalogue, cross);
        due.lastTag = work.lastTag;
        due.flowers = work.flowers;
        due.lastStage = vine.lastStage;
        due.isAboutToLoseCaps =
            work.steps.empty() && vine.lastStage && breeding::isAboutToLoseCaps(*vine.lastStage);
        all.push_back(std::move(due));
    }
    std::stable_sort(all.begin(), all.end(), [](const CrossDue& a, const CrossDue& b) {
        const auto left = vineyard::readPosition(a.position);
        const auto right = vineyard::readPosition(b.position);
        return left && right ? vineyard::compareAlongRows(*left, *right) < 0
                             : a.position < b.position;
    });
    return all;
}

Result<std::string> freshId(store::Database& database, std::string_view kind) {
    const std::string device = journal::deviceText('t', database.about().own.device).substr(1, 6);
    const std::string above = std::string(kind) + "/" + device + "-";
    std::uint64_t greatest = 0;
    const Status read = database.eachSubjectBetween(above, above + "~", [&](std::string_view path) {
        const std::string_view rest = path.substr(above.size());
        greatest = std::max(greatest, readCount(rest.substr(0, rest.find('/'))).value_or(0));
        return true;
    });
    if (!read) {
        return read.error();
    }
    return device + "-" + std::to_string(greatest + 1);
}

Result<std::string> openPerson(store::Database& database, Pen& pen, const std::string& name) {
    return open(database, pen, "person", {}, {{"name", name}});
}

Result<std::string> openCross(store::Database& database, Pen& pen, const NewCross& cross) {
    return open(database,
                pen,
                "cross",
                cross.author,
                {{"mother", cross.mother},
                 {"mother-at", cross.motherAt},
                 {"father", cross.father},
                 {"pollen-lot", cross.pollenLot},
                 {"opened", writeDate(pen.today())}});
}

Result<OpenedLot> openLot(store::Database& database, Pen& pen, const NewLot& lot) {
    // A number that no two bags of a station share: from the moment and the device.
    const std::uint64_t number = static_cast<std::uint64_t>(pen.nowMs()) * 31 +
                                 (database.about().own.device & 0xFFFFFFU) * 7919;
    const std::string label = vineyard::labelCode(number % vineyard::kLabelCodes);
    const Result<std::string> id = open(database,
                                        pen,
                                        "lot",
                                        lot.author,
                                        {{"kind", lot.kind},
                                         {"from", lot.from},
                                         {"accession", lot.accession},
                                         {"date", writeDate(pen.today())},
                                         {"amount", lot.amount},
                                         {"label", label}});
    if (!id) {
        return id.error();
    }
    return OpenedLot{*id, label};
}

Result<std::string> openWildVine(store::Database& database,
                                 Pen& pen,
                                 const std::string& author,
                                 const std::string& name,
                                 const std::string& site) {
    return open(database,
                pen,
                "accession",
                author,
                {{"name", name}, {"status", "wild accession"}, {"site", site}});
}

} // namespace bullace::field
