// Inbreeding of everybody. Only parents can make anybody inbred, so the columns are those of the
// relationship matrix among parents; a pair of parents is asked for in the column of the one that
// stands later, block by block within a generation, since the Mendelian variances that a column
// needs come from pairs of at least two generations before.
#include "core/breeding/relationship.hpp"
#include "core/breeding/relationship_columns.hpp"

#include <algorithm>
#include <cassert>

namespace bullace::breeding {

namespace {

std::size_t at(std::int32_t i) {
    return static_cast<std::size_t>(i);
}

// The parents of anybody, by generation.
struct Parents {
    std::vector<std::int32_t> placeOf; // of each individual among the parents, or kUnknown
    std::vector<std::int32_t> mother;  // places
    std::vector<std::int32_t> father;
    std::vector<std::int32_t> generation;
    std::vector<double> inbreeding;
    std::vector<double> mendelian;
};

std::vector<std::int32_t> generationsOf(const Pedigree& pedigree) {
    std::vector<std::int32_t> generation(pedigree.size(), 0);
    for (std::size_t i = 0; i < pedigree.size(); ++i) {
        for (const std::int32_t parent : {pedigree.mother[i], pedigree.father[i]}) {
            assert(parent < static_cast<std::int32_t>(i));
            if (parent != kUnknown) {
                generation[i] = std::max(generation[i], generation[at(parent)] + 1);
            }
        }
    }
    return generation;
}

Parents parentsOf(const Pedigree& pedigree) {
    Parents parents;
    const std::size_t n = pedigree.size();
    const std::vector<std::int32_t> generation = generationsOf(pedigree);
    parents.placeOf.assign(n, kUnknown);
    for (std::size_t i = 0; i < n; ++i) {
        for (const std::int32_t parent : {pedigree.mother[i], pedigree.father[i]}) {
            if (parent != kUnknown) {
                parents.placeOf[at(parent)] = 0;
            }
        }
    }
    std::vector<std::int32_t> members;
    for (std::size_t i = 0; i < n; ++i) {
        if (parents.placeOf[i] == 0) {
            members.push_back(static_cast<std::int32_t>(i));
        }
    }
    std::ranges::stable_sort(
        members, {}, [&generation](std::int32_t i) { return generation[at(i)]; });
    for (std::size_t p = 0; p < members.size(); ++p) {
        parents.placeOf[at(members[p])] = static_cast<std::int32_t>(p);
    }
    const auto place = [&parents](std::int32_t i) {
        return i == kUnknown ? kUnknown : parents.placeOf[at(i)];
    };
    for (const std::int32_t i : members) {
        parents.mother.push_back(place(pedigree.mother[at(i)]));
        parents.father.push_back(place(pedigree.father[at(i)]));
        parents.generation.push_back(generation[at(i)]);
    }
    parents.inbreeding.assign(members.size(), 0);
    parents.mendelian.assign(members.size(), 1);
    return parents;
}

// The pairs of places that have offspring, ordered by the later of the two, then the earlier.
struct Pairs {
    std::vector<std::size_t> start; // of each place's pairs, as the later one; one more at the end
    std::vector<std::int32_t> earlier;
    std::vector<double> relationship;
    std::vector<std::int32_t> ofPlace; // of each parent's own parents, or kUnknown
    std::vector<std::int32_t> ofOther; // of each individual's parents, where it is no parent
};

// Whether a pair has to be asked for: both are known, and it is no selfing.
bool isAsked(std::int32_t mother, std::int32_t father) {
    return mother != kUnknown && father != kUnknown && mother != father;
}

Pairs pairsOf(const Pedigree& pedigree, const Parents& parents) {
    struct Mating {
        std::int32_t earlier;
        std::int32_t child;
    };
    const std::size_t n = pedigree.size();
    const std::size_t places = parents.mother.size();
    const auto eachMating = [&](const auto& act) {
        for (std::size_t i = 0; i < n; ++i) {
            if (isAsked(pedigree.mother[i], pedigree.father[i])) {
                const std::int32_t one = parents.placeOf[at(pedigree.mother[i])];
                const std::int32_t two = parents.placeOf[at(pedigree.father[i])];
                act(at(std::max(one, two)), Mating{std::min(one, two), static_cast<int>(i)});
            }
        }
    };
    std::vector<std::size_t> fill(places + 1, 0);
    eachMating([&fill](std::size_t later, Mating) { ++fill[later + 1]; });
    for (std::size_t p = 0; p < places; ++p) {
        fill[p + 1] += fill[p];
    }
    const std::vector<std::size_t> start = fill;
    std::vector<Mating> matings(start[places]);
    eachMating([&](std::size_t later, Mating mating) { matings[fill[later]++] = mating; });

    Pairs pairs;
    pairs.ofPlace.assign(places, kUnknown);
    pairs.ofOther.assign(n, kUnknown);
    for (std::size_t p = 0; p < places; ++p) {
        pairs.start.push_back(pairs.earlier.size());
        const auto first = matings.begin() + static_cast<std::ptrdiff_t>(start[p]);
        const auto last = matings.begin() + static_cast<std::ptrdiff_t>(start[p + 1]);
        std::sort(
            first, last, [](const Mating& a, const Mating& b) { return a.earlier < b.earlier; });
        for (auto mating = first; mating != last; ++mating) {
            if (mating == first || mating->earlier != (mating - 1)->earlier) {
                pairs.earlier.push_back(mating->earlier);
            }
            const auto pair = static_cast<std::int32_t>(pairs.earlier.size()) - 1;
            const std::int32_t place = parents.placeOf[at(mating->child)];
            (place == kUnknown ? pairs.ofOther[at(mating->child)] : pairs.ofPlace[at(place)]) =
                pair;
        }
    }
    pairs.start.push_back(pairs.earlier.size());
    pairs.relationship.assign(pairs.earlier.size(), 0);
    return pairs;
}

double inbreedingOf(std::int32_t mother,
                    std::int32_t father,
                    std::int32_t pair,
                    const Parents& parents,
                    const Pairs& pairs) {
    if (mother != kUnknown && mother == father) {
        return (1 + parents.inbreeding[at(mother)]) / 2;
    }
    return pair == kUnknown ? 0 : pairs.relationship[at(pair)] / 2;
}

double mendelianOf(std::int32_t mother, std::int32_t father, std::span<const double> inbreeding) {
    const auto of = [&inbreeding](std::int32_t i) {
        return i == kUnknown ? -1 : inbreeding[at(i)];
    };
    return std::max(0.5 - (of(mother) + of(father)) / 4, kLeastMendelian);
}

// The relationships of the pairs whose later parents stand at `from` until `to`.
void solvePairs(std::size_t from, std::size_t to, RelationshipColumns& columns, Pairs& pairs) {
    std::vector<std::int32_t> block;
    std::vector<std::int32_t> rows;
    for (std::size_t p = from; p < to;) {
        block.clear();
        rows.clear();
        for (; p < to && block.size() < RelationshipColumns::kWidth; ++p) {
            if (pairs.start[p] != pairs.start[p + 1]) {
                block.push_back(static_cast<std::int32_t>(p));
                rows.insert(rows.end(),
                            pairs.earlier.begin() + static_cast<std::ptrdiff_t>(pairs.start[p]),
                            pairs.earlier.begin() +
                                static_cast<std::ptrdiff_t>(pairs.start[p + 1]));
            }
        }
        if (block.empty()) {
            return;
        }
        columns.solve(block, rows);
        for (std::size_t k = 0; k < block.size(); ++k) {
            for (std::size_t q = pairs.start[at(block[k])]; q < pairs.start[at(block[k]) + 1];
                 ++q) {
                pairs.relationship[q] = columns.row(pairs.earlier[q])[k];
            }
        }
    }
}

} // namespace

std::vector<double> inbreeding(const Pedigree& pedigree) {
    Parents parents = parentsOf(pedigree);
    Pairs pairs = pairsOf(pedigree, parents);
    RelationshipColumns columns(parents.mother, parents.father, parents.mendelian);
    const std::size_t places = parents.mother.size();
    for (std::size_t from = 0; from < places;) {
        std::size_t to = from;
        for (; to < places && parents.generation[to] == parents.generation[from]; ++to) {
            const std::int32_t mother = parents.mother[to];
            const std::int32_t father = parents.father[to];
            parents.inbreeding[to] =
                inbreedingOf(mother, father, pairs.ofPlace[to], parents, pairs);
            parents.mendelian[to] = mendelianOf(mother, father, parents.inbreeding);
        }
        solvePairs(from, to, columns, pairs);
        from = to;
    }
    std::vector<double> all(pedigree.size(), 0);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (parents.placeOf[i] != kUnknown) {
            all[i] = parents.inbreeding[at(parents.placeOf[i])];
        } else if (!pedigree.isFounder(i)) {
            const bool isSelfed = pedigree.mother[i] == pedigree.father[i];
            const std::int32_t mother =
                isSelfed ? parents.placeOf[at(pedigree.mother[i])] : kUnknown;
            all[i] = inbreedingOf(mother, mother, pairs.ofOther[i], parents, pairs);
        }
    }
    return all;
}

std::vector<double> mendelianVariances(const Pedigree& pedigree,
                                       std::span<const double> inbreeding) {
    assert(inbreeding.size() == pedigree.size());
    std::vector<double> variances(pedigree.size());
    for (std::size_t i = 0; i < variances.size(); ++i) {
        variances[i] = mendelianOf(pedigree.mother[i], pedigree.father[i], inbreeding);
    }
    return variances;
}

} // namespace bullace::breeding
