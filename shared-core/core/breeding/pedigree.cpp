// The lines are numbered as they are named, checked, and put in order of generations; what cannot
// be put in order holds a circle, whose members are found as a strongly connected component.
#include "core/breeding/pedigree.hpp"

#include "core/breeding/ancestry_circle.hpp"

#include <algorithm>
#include <limits>
#include <map>

namespace bullace::breeding {

namespace {

using Names = std::unordered_map<std::string, std::int32_t, NameHash, std::equal_to<>>;
using Clones = std::map<std::string, std::string, std::less<>>;
constexpr std::size_t kNoLine = std::numeric_limits<std::size_t>::max();

Error wrong(std::string message) {
    return {ErrorCode::InvalidInput, std::move(message), ""};
}

std::string parentsOf(const PedigreeLine& line) {
    const auto named = [](const std::string& name) { return name.empty() ? "unknown" : name; };
    return named(line.mother) + " and " + named(line.father);
}

// Each clone's genotype at the end of its chain.
Result<Clones> resolved(std::span<const CloneLine> lines) {
    std::map<std::string, const CloneLine*, std::less<>> of;
    for (const CloneLine& line : lines) {
        if (line.id.empty() || line.genotype.empty()) {
            return wrong("Line " + std::to_string(line.line) +
                         ": a clone needs its own name and that of its genotype.");
        }
        const auto [at, isNew] = of.emplace(line.id, &line);
        if (!isNew && at->second->genotype != line.genotype) {
            return wrong(line.id + " is a clone of " + at->second->genotype + " (line " +
                         std::to_string(at->second->line) + ") and of " + line.genotype +
                         " (line " + std::to_string(line.line) + "): it can be of one only.");
        }
    }
    Clones clones;
    for (const auto& [id, line] : of) {
        const CloneLine* at = line;
        for (std::size_t steps = 0; of.contains(at->genotype); ++steps) {
            if (steps == of.size()) {
                return wrong(id + " is a clone of itself (line " + std::to_string(line->line) +
                             ").");
            }
            at = of.find(at->genotype)->second;
        }
        clones.emplace(id, at->genotype);
    }
    return clones;
}

// The individuals as they were first named, before they are in order.
struct Draft {
    Names number;
    std::vector<const std::string*> names; // into `number`
    std::vector<std::int32_t> mother;
    std::vector<std::int32_t> father;
    std::vector<std::size_t> line; // index of its line, or kNoLine
    std::size_t repeated = 0;

    std::int32_t of(const std::string& id, const Clones& clones) {
        const auto clone = clones.empty() ? clones.end() : clones.find(id);
        const std::string& name = clone == clones.end() ? id : clone->second;
        if (name.empty()) {
            return kUnknown;
        }
        const auto [at, isNew] = number.emplace(name, static_cast<std::int32_t>(names.size()));
        if (isNew) {
            names.push_back(&at->first);
            mother.push_back(kUnknown);
            father.push_back(kUnknown);
            line.push_back(kNoLine);
        }
        return at->second;
    }
};

Result<Draft> draftOf(std::span<const PedigreeLine> lines, const Clones& clones) {
    if (lines.size() > std::size_t{std::numeric_limits<std::int32_t>::max()} / 3) {
        return wrong("A pedigree of more than 700 million lines cannot be computed.");
    }
    Draft draft;
    draft.number.reserve(lines.size());
    for (std::size_t k = 0; k < lines.size(); ++k) {
        const PedigreeLine& line = lines[k];
        if (line.id.empty()) {
            return wrong("Line " + std::to_string(line.line) + " has no name of a vine.");
        }
        const std::int32_t id = draft.of(line.id, clones);
        const std::int32_t mother = draft.of(line.mother, clones);
        const std::int32_t father = draft.of(line.father, clones);
        const auto i = static_cast<std::size_t>(id);
        if (draft.line[i] == kNoLine) {
            draft.line[i] = k;
            draft.mother[i] = mother;
            draft.father[i] = father;
        } else if (draft.mother[i] == mother && draft.father[i] == father) {
            ++draft.repeated;
        } else {
            const PedigreeLine& first = lines[draft.line[i]];
            return wrong(line.id + " is listed twice: with the parents " + parentsOf(first) +
                         " on line " + std::to_string(first.line) + ", with " + parentsOf(line) +
                         " on line " + std::to_string(line.line) + ".");
        }
    }
    return draft;
}

// Generations from the founders, by taking away what has no parent left (Kahn 1962, Commun. ACM
// 5:558-562); -1 for those on a circle or below one.
std::vector<std::int32_t> generationsOf(const Draft& draft) {
    const std::size_t n = draft.names.size();
    std::vector<std::uint32_t> start(n + 1, 0);
    std::vector<std::int32_t> waitsFor(n, 0);
    const auto eachParent = [&draft](std::size_t i, const auto& act) {
        for (const std::int32_t parent : {draft.mother[i], draft.father[i]}) {
            if (parent != kUnknown) {
                act(static_cast<std::size_t>(parent));
            }
        }
    };
    for (std::size_t i = 0; i < n; ++i) {
        eachParent(i, [&](std::size_t parent) {
            ++start[parent + 1];
            ++waitsFor[i];
        });
    }
    for (std::size_t i = 0; i < n; ++i) {
        start[i + 1] += start[i];
    }
    std::vector<std::uint32_t> children(start[n]);
    std::vector<std::uint32_t> fill(start.begin(), start.end() - 1);
    for (std::size_t i = 0; i < n; ++i) {
        eachParent(i, [&](std::size_t parent) {
            children[fill[parent]++] = static_cast<std::uint32_t>(i);
        });
    }
    std::vector<std::int32_t> generation(n, -1);
    std::vector<std::int32_t> reached(n, 0);
    std::vector<std::uint32_t> ready;
    for (std::size_t i = 0; i < n; ++i) {
        if (waitsFor[i] == 0) {
            ready.push_back(static_cast<std::uint32_t>(i));
        }
    }
    for (std::size_t at = 0; at < ready.size(); ++at) {
        const std::size_t i = ready[at];
        generation[i] = reached[i];
        for (std::size_t c = start[i]; c < start[i + 1]; ++c) {
            const std::uint32_t child = children[c];
            reached[child] = std::max(reached[child], generation[i] + 1);
            if (--waitsFor[child] == 0) {
                ready.push_back(child);
            }
        }
    }
    return generation;
}

Error circleError(const Draft& draft, std::span<const PedigreeLine> lines) {
    const auto circles = ancestryCircles(draft.mother, draft.father);
    constexpr std::size_t kMostNamed = 20;
    const std::vector<std::int32_t>& circle = circles.front();
    const auto nameOf = [&draft](std::int32_t i) {
        return *draft.names[static_cast<std::size_t>(i)];
    };
    std::string message = nameOf(circle.front()) + " is its own ancestor: ";
    for (std::size_t k = 0; k < circle.size() && k < kMostNamed; ++k) {
        const std::size_t line = draft.line[static_cast<std::size_t>(circle[k])];
        message += (k == 0 ? "" : ", ") + nameOf(circle[k]) + " (line " +
                   std::to_string(lines[line].line) + ")";
    }
    if (circle.size() > kMostNamed) {
        message += " and " + std::to_string(circle.size() - kMostNamed) + " more";
    }
    message += circles.size() == 1
                   ? "."
                   : ". The pedigree has " + std::to_string(circles.size()) + " such circles.";
    return wrong(message);
}

// In order of generation; those of one generation stay as they were first named.
Pedigree inOrder(Draft&& draft, const std::vector<std::int32_t>& generation) {
    const std::size_t n = draft.names.size();
    std::vector<std::uint32_t> order(n);
    const std::int32_t last = n == 0 ? 0 : *std::ranges::max_element(generation);
    std::vector<std::uint32_t> place(static_cast<std::size_t>(last) + 2, 0);
    for (const std::int32_t g : generation) {
        ++place[static_cast<std::size_t>(g) + 1];
    }
    for (std::size_t g = 1; g < place.size(); ++g) {
        place[g] += place[g - 1];
    }
    for (std::size_t i = 0; i < n; ++i) {
        order[i] = place[static_cast<std::size_t>(generation[i])]++;
    }
    Pedigree pedigree;
    pedigree.names.resize(n);
    pedigree.mother.assign(n, kUnknown);
    pedigree.father.assign(n, kUnknown);
    const auto moved = [&order](std::int32_t parent) {
        return parent == kUnknown
                   ? kUnknown
                   : static_cast<std::int32_t>(order[static_cast<std::size_t>(parent)]);
    };
    for (std::size_t i = 0; i < n; ++i) {
        pedigree.names[order[i]] = *draft.names[i];
        pedigree.mother[order[i]] = moved(draft.mother[i]);
        pedigree.father[order[i]] = moved(draft.father[i]);
        pedigree.namedOnlyAsParent += draft.line[i] == kNoLine ? 1U : 0U;
    }
    for (auto& [name, i] : draft.number) {
        i = moved(i);
    }
    pedigree.index = std::move(draft.number);
    pedigree.repeatedLines = draft.repeated;
    return pedigree;
}

} // namespace

std::optional<std::int32_t> Pedigree::find(std::string_view name) const {
    const auto at = index.find(name);
    return at == index.end() ? std::nullopt : std::optional(at->second);
}

Result<Pedigree> makePedigree(std::span<const PedigreeLine> lines,
                              std::span<const CloneLine> clones) {
    const auto genotypes = resolved(clones);
    if (!genotypes) {
        return genotypes.error();
    }
    auto draft = draftOf(lines, *genotypes);
    if (!draft) {
        return draft.error();
    }
    const std::vector<std::int32_t> generation = generationsOf(*draft);
    if (std::ranges::find(generation, -1) != generation.end()) {
        return circleError(*draft, lines);
    }
    Pedigree pedigree = inOrder(std::move(*draft), generation);
    for (const auto& [id, genotype] : *genotypes) {
        if (const auto found = pedigree.find(genotype)) {
            pedigree.index.emplace(id, *found);
        }
    }
    return pedigree;
}

} // namespace bullace::breeding
