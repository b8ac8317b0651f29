#include "core/walk/route.hpp"

#include "core/vineyard/block.hpp"
#include "core/vineyard/position.hpp"

#include <algorithm>
#include <utility>

namespace bullace::walk {

namespace {

using vineyard::Position;
using vineyard::readPosition;

// The places of a row from its first vine on.
std::vector<Position> placesOf(const RowPlan& row) {
    std::vector<Position> places;
    for (unsigned vine = 1; vine <= row.vines; ++vine) {
        places.push_back({row.block, row.row, vine, 0});
    }
    for (const std::string& text : row.between) {
        const auto place = readPosition(text);
        if (place && place->block == row.block && place->row == row.row) {
            places.push_back(*place);
        }
    }
    std::sort(places.begin(), places.end(), [](const Position& a, const Position& b) {
        return vineyard::compareAlongRows(a, b) < 0;
    });
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places;
}

bool canBe(const Share& share) {
    return share.mine < share.of && (share.by != Share::By::Sides || share.of == 2);
}

// The vine's number decides, not its place among the stops: a vine planted between two would
// otherwise turn odd into even behind it.
bool isMine(const Share& share, const Position& place) {
    const unsigned turn = place.vine == 0 ? 0 : place.vine - 1;
    return share.by != Share::By::Stops || turn % share.of == share.mine;
}

// The sides in the order in which one passes them from `from`.
std::vector<Side> sidesOf(const RouteWish& wish, End from) {
    if (wish.share.by == Share::By::Sides) {
        return {wish.share.mine == 0 ? Side::Left : Side::Right};
    }
    if (!wish.bothSides) {
        return {Side::Whole};
    }
    return from == End::First ? std::vector{Side::Left, Side::Right}
                              : std::vector{Side::Right, Side::Left};
}

End other(End end) {
    return end == End::First ? End::Last : End::First;
}

void appendPass(std::vector<Stop>& stops, const std::vector<Position>& places, Side side, End end) {
    for (std::size_t i = 0; i < places.size(); ++i) {
        const Position& place = places[end == End::First ? i : places.size() - 1 - i];
        stops.push_back({vineyard::writePosition(place), side});
    }
}

} // namespace

std::vector<Stop> routeOf(const RouteWish& wish) {
    std::vector<Stop> stops;
    if (!canBe(wish.share) || wish.everyNthRow == 0) {
        return stops;
    }
    End end = wish.start;
    std::size_t walked = 0;
    for (std::size_t i = 0; i < wish.rows.size(); i += wish.everyNthRow, ++walked) {
        if (wish.share.by == Share::By::Rows && walked % wish.share.of != wish.share.mine) {
            continue;
        }
        std::vector<Position> places = placesOf(wish.rows[i]);
        std::erase_if(places,
                      [&wish](const Position& place) { return !isMine(wish.share, place); });
        if (places.empty()) {
            continue; // nobody walks an empty row, so its far end is not reached
        }
        End at = end;
        for (const Side side : sidesOf(wish, end)) {
            appendPass(stops, places, side, at);
            at = other(at);
        }
        end = wish.order == Order::Serpentine ? at : wish.start;
    }
    return stops;
}

std::vector<Stop> routeThrough(std::vector<std::string> positions, End start) {
    const auto behind =
        std::partition(positions.begin(), positions.end(), [](const std::string& text) {
            return readPosition(text).has_value();
        });
    std::sort(positions.begin(), behind, [](const std::string& a, const std::string& b) {
        return vineyard::compareAlongRows(*readPosition(a), *readPosition(b)) < 0;
    });
    std::sort(behind, positions.end());
    const auto isSameRow = [](const std::string& a, const std::string& b) {
        const auto left = readPosition(a);
        const auto right = readPosition(b);
        return left->block == right->block && left->row == right->row;
    };
    End end = start;
    for (auto row = positions.begin(); row != behind;) {
        const auto next = std::find_if(
            row, behind, [&](const std::string& text) { return !isSameRow(*row, text); });
        if (end == End::Last) {
            std::reverse(row, next);
        }
        end = other(end);
        row = next;
    }
    positions.erase(std::unique(positions.begin(), positions.end()), positions.end());
    std::vector<Stop> stops;
    stops.reserve(positions.size());
    for (std::string& position : positions) {
        stops.push_back({std::move(position), Side::Whole});
    }
    return stops;
}

} // namespace bullace::walk
