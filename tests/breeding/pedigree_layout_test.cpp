// Where the vines of a drawn pedigree stand, and which lines join them.
#include "core/breeding/pedigree_layout.hpp"

#include "breeding/known_pedigrees.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <rapidcheck.h>
#include <set>

using namespace bullace;
using namespace bullace::breeding;
using namespace bullace::test;

namespace {

PedigreeLayout
layoutOf(const Pedigree& pedigree, const std::string& focus, LayoutExtent extent = {}) {
    const std::int32_t i = in(pedigree, focus);
    auto layout = layoutPedigree(pedigree, {&i, 1}, extent);
    REQUIRE(layout.ok());
    return std::move(*layout);
}

std::size_t countOf(const PedigreeLayout& layout, LayoutLine line) {
    return static_cast<std::size_t>(std::ranges::count(layout.edges, line, &LayoutEdge::line));
}

} // namespace

TEST_CASE("parents stand above the one node of their cross, full sibs below it") {
    const Pedigree pedigree =
        pedigreeOf(linesOf({{"C", "A", "B"}, {"D", "A", "B"}, {"E", "C", "D"}}));
    const PedigreeLayout layout = layoutOf(pedigree, "E");
    CHECK(layout.nodes.size() == 7); // five vines, two crosses
    CHECK(layout.height == 4);
    CHECK(layout.crossings == 0);
    CHECK(countOf(layout, LayoutLine::Mother) == 2);
    CHECK(countOf(layout, LayoutLine::Pollen) == 2);
    CHECK(countOf(layout, LayoutLine::Offspring) == 3);
    CHECK(std::ranges::count(layout.nodes, true, &LayoutNode::isFocus) == 1);
}

TEST_CASE("a selfing is one double line, a backcross leads its line past the layers between") {
    const Pedigree pedigree = pedigreeOf(linesOf({{"S", "A", "A"}, {"B", "S", "A"}}));
    const PedigreeLayout layout = layoutOf(pedigree, "B");
    CHECK(countOf(layout, LayoutLine::Selfing) == 1);
    const auto pollen = std::ranges::find(layout.edges, LayoutLine::Pollen, &LayoutEdge::line);
    REQUIRE(pollen != layout.edges.end());
    CHECK(pollen->points.size() == 4);
    CHECK(pollen->points.front() == layout.nodes[pollen->from].at);
    CHECK(pollen->points.back() == layout.nodes[pollen->to].at);
}

TEST_CASE("what lies beyond the generations asked for is hidden, and told") {
    const Pedigree pedigree = pedigreeOf(
        linesOf({{"B", "A", ""}, {"C", "B", ""}, {"D", "C", "X"}, {"E", "D", ""}, {"F", "E", ""}}));
    const PedigreeLayout layout = layoutOf(pedigree, "C", {1, 1});
    std::set<std::string> shown;
    for (const LayoutNode& node : layout.nodes) {
        if (node.kind == LayoutKind::Individual) {
            const std::string& name = pedigree.names[static_cast<std::size_t>(node.individual)];
            shown.insert(name);
            CHECK(node.hasHiddenParents == (name == "B"));
            CHECK(node.hasHiddenOffspring == (name == "D"));
        }
    }
    CHECK(shown == std::set<std::string>{"B", "C", "D", "X"});
    CHECK_FALSE(layoutPedigree(pedigree, {}).ok());
    const std::int32_t nobody = 99;
    CHECK_FALSE(layoutPedigree(pedigree, {&nobody, 1}).ok());
}

TEST_CASE("more than can be drawn is refused") {
    Lines lines;
    for (int i = 0; i < 3000; ++i) {
        lines.push_back({"S" + std::to_string(i), "A", "B", 0});
    }
    const Pedigree pedigree = pedigreeOf(lines);
    const std::int32_t mother = in(pedigree, "A");
    const auto layout = layoutPedigree(pedigree, {&mother, 1});
    REQUIRE_FALSE(layout.ok());
    CHECK(layout.error().code == ErrorCode::BeyondLimit);
}

TEST_CASE("no two nodes overlap, each vine stands once, and lines go down") {
    CHECK(rc::check([](std::uint64_t seed) {
        std::mt19937_64 dice(seed);
        const Pedigree pedigree = pedigreeOf(randomLines(dice, 3 + dice() % 80));
        const auto focus = static_cast<std::int32_t>(dice() % pedigree.size());
        const LayoutExtent extent{dice() % 6, dice() % 6};
        const auto layout = layoutPedigree(pedigree, {&focus, 1}, extent);
        RC_ASSERT(layout.ok());
        std::map<double, std::vector<double>> layers;
        std::set<std::int32_t> seen;
        for (const LayoutNode& node : layout->nodes) {
            RC_ASSERT(std::isfinite(node.at.x) && node.at.x >= 0 && node.at.x <= layout->width);
            layers[node.at.y].push_back(node.at.x);
            RC_ASSERT(node.kind == LayoutKind::Cross || seen.insert(node.individual).second);
        }
        for (auto& [y, places] : layers) {
            std::ranges::sort(places);
            for (std::size_t k = 1; k < places.size(); ++k) {
                RC_ASSERT(places[k] - places[k - 1] > 1 - 1e-9);
            }
        }
        for (const LayoutEdge& edge : layout->edges) {
            for (std::size_t k = 1; k < edge.points.size(); ++k) {
                RC_ASSERT(edge.points[k].y == edge.points[k - 1].y + 1);
            }
        }
        const auto again = layoutPedigree(pedigree, {&focus, 1}, extent);
        RC_ASSERT(again->crossings == layout->crossings);
        RC_ASSERT(again->nodes.back().at == layout->nodes.back().at);
    }));
}
