#include "desk/selection_ground.hpp"

#include "office/station_notes_reading.hpp"

#include "core/breeding/related.hpp"
#include "core/breeding/relationship.hpp"
#include "core/season/station_pedigree.hpp"

#include <map>

namespace bullace::desk {

namespace {

bool isOf(const season::NotedAccession& accession, CandidateGroup group) {
    switch (group) {
    case CandidateGroup::Selections:
        return accession.status == "selection";
    case CandidateGroup::Seedlings:
        return accession.status == "seedling";
    case CandidateGroup::Everything:
        return true;
    }
    return true;
}

// Where each accession stands on the day, as far as anything was noted of its vines.
std::vector<std::vector<std::string>> standingOf(const season::StationNotes& notes,
                                                 const vineyard::Catalogue& catalogue,
                                                 CivilDate today) {
    std::vector<std::vector<std::string>> standing(notes.accessions.size());
    for (const season::NotedVine& vine : notes.vines) {
        const bool isThere =
            catalogue.accessionAt(vine.position, today) == notes.accessions[vine.accession].id;
        auto& positions = standing[vine.accession];
        if (isThere && (positions.empty() || positions.back() != vine.position)) {
            positions.push_back(vine.position);
        }
    }
    return standing;
}

// Relatives lend each other information where the pedigree can be followed.
std::shared_ptr<const trials::Related>
relatedIn(const season::StationNotes& notes, bool isWanted, MeetingGround& ground) {
    const auto pedigree = season::pedigreeOf(notes);
    if (!pedigree) {
        ground.remarks.push_back({BULLACE_SENTENCE("Remark", "The pedigree is not used. %1"),
                                  {pedigree.error().message}});
        return {};
    }
    auto related = breeding::relatedThrough(*pedigree);
    for (const season::NotedAccession& accession : notes.accessions) {
        const auto place = pedigree->find(accession.id);
        ground.inbreeding.push_back(place ? related->inbreeding[static_cast<std::size_t>(*place)]
                                          : 0.0);
    }
    return isWanted ? related : nullptr;
}

} // namespace

std::vector<const office::VerdictNote*> MeetingGround::verdictsOf(std::size_t accession) const {
    std::vector<const office::VerdictNote*> of;
    for (const office::VerdictNote& verdict : verdicts) {
        if (verdict.accession == accession) {
            of.push_back(&verdict);
        }
    }
    return of;
}

Result<MeetingGround> readMeeting(store::Database& database,
                                  const vineyard::Catalogue& catalogue,
                                  const MeetingWish& wish,
                                  CivilDate today,
                                  const office::Token& token) {
    const auto wishes = season::readWishes(wish.counts);
    if (!wishes) {
        return wishes.error();
    }
    auto notes = office::readStationNotes(database, catalogue, token);
    if (!notes) {
        return notes.error();
    }
    MeetingGround ground;
    auto verdicts = office::readVerdicts(database, *notes);
    if (!verdicts) {
        return verdicts.error();
    }
    ground.verdicts = std::move(*verdicts);
    const auto related = relatedIn(*notes, wish.isThroughPedigree, ground);
    std::vector<std::size_t> candidates;
    for (std::size_t i = 0; i < notes->accessions.size(); ++i) {
        if (isOf(notes->accessions[i], wish.group)) {
            candidates.push_back(i);
        }
    }
    auto list =
        season::selectionList(*notes, catalogue.blocks(), candidates, *wishes, wish.best, related);
    if (!list) {
        return list.error();
    }
    ground.list = std::move(*list);
    ground.standing = standingOf(*notes, catalogue, today);
    ground.notes = std::move(*notes);
    return ground;
}

} // namespace bullace::desk
