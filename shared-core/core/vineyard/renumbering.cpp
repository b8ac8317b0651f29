#include "core/vineyard/renumbering.hpp"

#include "core/vineyard/position.hpp"

namespace bullace::vineyard {

namespace {

void step(const std::map<std::string, std::string, std::less<>>& names, std::string& position) {
    if (const auto found = names.find(position); found != names.end()) {
        position = found->second;
    }
}

} // namespace

Result<Renumberings> Renumberings::of(const std::vector<Renumbering>& renumberings) {
    Renumberings made;
    for (const Renumbering& renumbering : renumberings) {
        Step& named = made.steps_[renumbering.from];
        for (const auto& [before, after] : renumbering.oldToNew) {
            const bool isSpelt = readPosition(before) && readPosition(after);
            if (!isSpelt || !named.forward.emplace(before, after).second ||
                !named.back.emplace(after, before).second) {
                return Error{ErrorCode::InvalidInput,
                             "The renumbering of " + writeDate(renumbering.from) + " says \"" +
                                 before + "\" becomes \"" + after + "\". " +
                                 (isSpelt ? "One of them is named twice; each vine needs a place "
                                            "of its own."
                                          : "A position is written like B2-07-14."),
                             {}};
            }
        }
    }
    return made;
}

std::string
Renumberings::follow(std::string_view position, CivilDate written, CivilDate date) const {
    std::string name(position);
    for (auto at = steps_.upper_bound(written); at != steps_.end() && at->first <= date; ++at) {
        step(at->second.forward, name);
    }
    for (auto at = steps_.upper_bound(written); at != steps_.begin();) {
        --at;
        if (at->first <= date) {
            break;
        }
        step(at->second.back, name);
    }
    return name;
}

std::string Renumberings::newest(std::string_view position, CivilDate written) const {
    std::string name(position);
    for (auto at = steps_.upper_bound(written); at != steps_.end(); ++at) {
        step(at->second.forward, name);
    }
    return name;
}

} // namespace bullace::vineyard
