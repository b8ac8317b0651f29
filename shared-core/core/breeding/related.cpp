#include "core/breeding/related.hpp"

#include "core/breeding/relationship.hpp"

namespace bullace::breeding {

std::shared_ptr<const trials::Related> relatedThrough(const Pedigree& pedigree) {
    auto related = std::make_shared<trials::Related>();
    related->names = pedigree.names;
    related->inbreeding = inbreeding(pedigree);
    InverseRelationship inverse = inverseRelationship(pedigree, related->inbreeding);
    related->inverse = std::move(inverse.inverse);
    related->logDeterminant = inverse.logDeterminant;
    return related;
}

} // namespace bullace::breeding
