// Looks through the whole station for what looks wrong though nothing conflicts.
#pragma once

#include "office/act.hpp"
#include "office/desk.hpp"

#include "core/merge/finding.hpp"
#include "core/vineyard/catalogue.hpp"

#include <string>
#include <vector>

namespace bullace::office {

// Row by row, then entry by entry; those that a person put aside are left out. By kind, then along
// the rows. Errors: those of reading; Cancelled.
[[nodiscard]] Result<std::vector<merge::Finding>>
stationFindings(store::Database& database,
                const vineyard::Catalogue& catalogue,
                CivilDate today,
                const Token& token);

// The same of one block's rows alone; nothing about clocks and devices.
[[nodiscard]] Result<std::vector<merge::Finding>>
blockFindings(store::Database& database,
              const vineyard::Catalogue& catalogue,
              const std::string& block,
              CivilDate today,
              const Token& token);

// The repair as one act, over what stands now at each of its subjects. Errors: InvalidInput where
// the finding has none; those of reading.
[[nodiscard]] Result<Act> repairAct(store::Database& database,
                                    const merge::Finding& finding,
                                    const std::string& author,
                                    const std::string& why);

// The finding is right as it stands: it is not told again until somebody writes there.
[[nodiscard]] Result<Act>
asideAct(store::Database& database, const merge::Finding& finding, const std::string& author);

} // namespace bullace::office
