// Which stops a person passes, and in which order.
#include "core/walk/route.hpp"

#include "core/vineyard/position.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <random>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace bullace::walk {

namespace {

std::string inWords(const std::vector<Stop>& stops) {
    std::string words;
    for (const Stop& stop : stops) {
        words += words.empty() ? "" : " ";
        words += stop.position.substr(stop.position.find('-') + 1);
        words += stop.side == Side::Left ? "l" : stop.side == Side::Right ? "r" : "";
    }
    return words;
}

RowPlan row(unsigned number, unsigned vines) {
    return {"B2", number, vines, {}};
}

RouteWish wish(std::vector<RowPlan> rows) {
    RouteWish made;
    made.rows = std::move(rows);
    return made;
}

// Rows of 0 to 12 vines in two blocks, some with vines planted between two.
std::vector<RowPlan> someRows(std::mt19937_64& dice) {
    std::vector<RowPlan> rows;
    for (unsigned number = 1; number <= 1 + dice() % 7; ++number) {
        RowPlan plan{dice() % 2 == 0 ? "B2" : "N", number, static_cast<unsigned>(dice() % 13), {}};
        for (unsigned vine = 1; vine <= plan.vines; ++vine) {
            if (dice() % 6 == 0) {
                plan.between.push_back(vineyard::writePosition({plan.block, plan.row, vine, 'a'}));
            }
        }
        rows.push_back(plan);
    }
    return rows;
}

RouteWish someWish(std::mt19937_64& dice) {
    RouteWish made = wish(someRows(dice));
    made.order = dice() % 2 == 0 ? Order::Serpentine : Order::OneWay;
    made.start = dice() % 2 == 0 ? End::First : End::Last;
    made.everyNthRow = 1 + static_cast<unsigned>(dice() % 3);
    made.bothSides = dice() % 2 == 0;
    return made;
}

// Every place of the rows that are walked, in order along the row.
std::vector<std::vector<std::string>> placesOf(const RouteWish& wished) {
    std::vector<std::vector<std::string>> rows;
    for (std::size_t i = 0; i < wished.rows.size(); i += wished.everyNthRow) {
        const RowPlan& plan = wished.rows[i];
        std::vector<std::string> places;
        for (unsigned vine = 1; vine <= plan.vines; ++vine) {
            places.push_back(vineyard::writePosition({plan.block, plan.row, vine, 0}));
            const std::string between = places.back() + "a";
            if (std::count(plan.between.begin(), plan.between.end(), between) > 0) {
                places.push_back(between);
            }
        }
        rows.push_back(places);
    }
    return rows;
}

using Counts = std::map<std::pair<std::string, Side>, int>;

Counts countsOf(const std::vector<Stop>& stops) {
    Counts counts;
    for (const Stop& stop : stops) {
        ++counts[{stop.position, stop.side}];
    }
    return counts;
}

std::vector<Share> sharesOf(Share::By by, unsigned people) {
    std::vector<Share> shares;
    for (unsigned mine = 0; mine < people; ++mine) {
        shares.push_back({mine, people, by});
    }
    return shares;
}

} // namespace

TEST_CASE("a serpentine goes on from the end at which one is") {
    CHECK(inWords(routeOf(wish({row(7, 3), row(8, 2), row(9, 3)}))) ==
          "07-01 07-02 07-03 08-02 08-01 09-01 09-02 09-03");
    RouteWish fromTheEnd = wish({row(7, 3), row(8, 2)});
    fromTheEnd.start = End::Last;
    CHECK(inWords(routeOf(fromTheEnd)) == "07-03 07-02 07-01 08-01 08-02");
}

TEST_CASE("one way begins each row at the same end") {
    RouteWish oneWay = wish({row(7, 2), row(8, 2)});
    oneWay.order = Order::OneWay;
    CHECK(inWords(routeOf(oneWay)) == "07-01 07-02 08-01 08-02");
    oneWay.start = End::Last;
    CHECK(inWords(routeOf(oneWay)) == "07-02 07-01 08-02 08-01");
}

TEST_CASE("both sides of a row end where they began, with the wire on the same hand") {
    RouteWish both = wish({row(7, 2), row(8, 1)});
    both.bothSides = true;
    CHECK(inWords(routeOf(both)) == "07-01l 07-02l 07-02r 07-01r 08-01l 08-01r");
    both.start = End::Last;
    CHECK(inWords(routeOf(both)) == "07-02r 07-01r 07-01l 07-02l 08-01r 08-01l");
}

TEST_CASE("every second row leaves out the others, and the serpentine turns only where one walks") {
    RouteWish second = wish({row(7, 2), row(8, 2), row(9, 2), row(10, 0), row(11, 2)});
    second.everyNthRow = 2;
    CHECK(inWords(routeOf(second)) == "07-01 07-02 09-02 09-01 11-01 11-02");
    RouteWish withEmpty = wish({row(7, 1), row(8, 0), row(9, 2)});
    CHECK(inWords(routeOf(withEmpty)) == "07-01 09-02 09-01");
}

TEST_CASE("a vine planted between two is a stop between them, and others' vines are not") {
    RouteWish wished = wish({row(7, 2)});
    wished.rows[0].between = {"B2-07-01b", "B2-07-01a", "B2-08-01a", "B3-07-01a", "no place"};
    CHECK(inWords(routeOf(wished)) == "07-01 07-01a 07-01b 07-02");
}

TEST_CASE("two people with odd and even vines keep them behind a vine planted between two") {
    RouteWish odd = wish({row(7, 4)});
    odd.rows[0].between = {"B2-07-02a"};
    odd.share = {0, 2, Share::By::Stops};
    RouteWish even = odd;
    even.share.mine = 1;
    CHECK(inWords(routeOf(odd)) == "07-01 07-03");
    CHECK(inWords(routeOf(even)) == "07-02 07-02a 07-04");
    even.start = End::Last; // she comes from the other end, and still takes the even ones
    CHECK(inWords(routeOf(even)) == "07-04 07-02a 07-02");
}

TEST_CASE("two people on the two sides of a row walk one side each") {
    RouteWish left = wish({row(7, 2), row(8, 2)});
    left.share = {0, 2, Share::By::Sides};
    CHECK(inWords(routeOf(left)) == "07-01l 07-02l 08-02l 08-01l");
}

TEST_CASE("a share that cannot be has no stops") {
    for (const Share share : {Share{0, 0, Share::By::Stops},
                              Share{2, 2, Share::By::Rows},
                              Share{0, 3, Share::By::Sides},
                              Share{0, 1, Share::By::Sides}}) {
        RouteWish wished = wish({row(7, 3)});
        wished.share = share;
        CHECK(routeOf(wished).empty());
    }
    RouteWish never = wish({row(7, 3)});
    never.everyNthRow = 0;
    CHECK(routeOf(never).empty());
}

TEST_CASE("every place is passed once, or once on either side, and neighbours follow each other") {
    std::mt19937_64 dice(11);
    for (int run = 0; run < 500; ++run) {
        const RouteWish wished = someWish(dice);
        const std::vector<Stop> stops = routeOf(wished);
        Counts expected;
        std::map<std::string, std::pair<std::size_t, std::size_t>> where;
        const auto rows = placesOf(wished);
        for (std::size_t i = 0; i < rows.size(); ++i) {
            for (std::size_t j = 0; j < rows[i].size(); ++j) {
                where[rows[i][j]] = {i, j};
                for (const Side side : wished.bothSides ? std::vector{Side::Left, Side::Right}
                                                        : std::vector{Side::Whole}) {
                    expected[{rows[i][j], side}] = 1;
                }
            }
        }
        REQUIRE(countsOf(stops) == expected);
        for (std::size_t i = 1; i < stops.size(); ++i) {
            const auto [beforeRow, before] = where[stops[i - 1].position];
            const auto [hereRow, here] = where[stops[i].position];
            if (beforeRow == hereRow) {
                const bool turns = stops[i - 1].side != stops[i].side;
                REQUIRE((turns ? before == here : before + 1 == here || here + 1 == before));
            } else {
                REQUIRE(beforeRow < hereRow);
            }
        }
    }
}

TEST_CASE("the shares of all people together are the whole walk, and no stop is in two of them") {
    std::mt19937_64 dice(12);
    for (int run = 0; run < 500; ++run) {
        RouteWish wished = someWish(dice);
        const auto by = static_cast<Share::By>(dice() % 3);
        const unsigned people = by == Share::By::Sides ? 2 : 1 + static_cast<unsigned>(dice() % 4);
        RouteWish whole = wished;
        whole.bothSides = whole.bothSides || by == Share::By::Sides;
        std::vector<Stop> together;
        for (const Share share : sharesOf(by, people)) {
            wished.share = share;
            // Each may begin at another end: what is whose must not hang on that.
            wished.start = dice() % 2 == 0 ? End::First : End::Last;
            const auto stops = routeOf(wished);
            together.insert(together.end(), stops.begin(), stops.end());
        }
        REQUIRE(countsOf(together) == countsOf(routeOf(whole)));
    }
}

TEST_CASE("chosen vines are passed along the rows, each once, and turn at each row that has one") {
    const auto stops = routeThrough({"B2-09-02",
                                     "B2-07-10",
                                     "B2-07-09",
                                     "B2-07-09",
                                     "B10-01-01",
                                     "nowhere",
                                     "B2-09-30",
                                     "B2-09-02a"},
                                    End::First);
    CHECK(inWords(stops) == "01-01 07-10 07-09 09-02 09-02a 09-30 nowhere");
    CHECK(stops[0].position == "B10-01-01");
    CHECK(inWords(routeThrough({"B2-07-01", "B2-07-02", "B2-08-05"}, End::Last)) ==
          "07-02 07-01 08-05");
    CHECK(routeThrough({}, End::First).empty());
}

} // namespace bullace::walk
