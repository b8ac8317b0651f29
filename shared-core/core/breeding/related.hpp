// A pedigree as a mixed model takes it: relatives lend each other information.
#pragma once

#include "core/breeding/pedigree.hpp"
#include "core/trials/mixed_model.hpp"

#include <memory>

namespace bullace::breeding {

// The inverse relationship matrix of all individuals, for a random term whose levels are among
// them: its predictions are breeding values, those of individuals without records too.
// Source  Henderson 1976, Biometrics 32:69-83; Quaas 1976, Biometrics 32:949-953.
[[nodiscard]] std::shared_ptr<const trials::Related> relatedThrough(const Pedigree& pedigree);

} // namespace bullace::breeding
