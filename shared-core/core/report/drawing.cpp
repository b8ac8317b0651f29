#include "core/report/drawing.hpp"

#include <algorithm>
#include <cmath>

namespace bullace::report {

namespace {

constexpr double kOutsideMm = 0.1;

bool isInside(const Drawing& drawing, DrawingPoint at) {
    return std::isfinite(at.x) && std::isfinite(at.y) && at.x >= -kOutsideMm &&
           at.y >= -kOutsideMm && at.x <= drawing.width + kOutsideMm &&
           at.y <= drawing.height + kOutsideMm;
}

Status refused(const std::string& what, const std::string& why) {
    return Error{ErrorCode::InvalidInput, "The drawing's " + what + " " + why + ".", {}};
}

Status checkBox(const Drawing& drawing, const DrawingBox& box, std::size_t number) {
    const std::string what = "box " + (box.name.empty() ? std::to_string(number) : box.name);
    if (!(box.width > 0) || !(box.height > 0)) {
        return refused(what, "has no size");
    }
    const DrawingPoint end{box.at.x + box.width, box.at.y + box.height};
    return isInside(drawing, box.at) && isInside(drawing, end)
               ? Status()
               : refused(what, "lies outside of it");
}

Status checkLine(const Drawing& drawing, const DrawingLine& line, std::size_t number) {
    const std::string what = "line " + std::to_string(number);
    if (line.points.size() < 2) {
        return refused(what, "has less than two points");
    }
    const bool isAllInside = std::ranges::all_of(
        line.points, [&drawing](DrawingPoint at) { return isInside(drawing, at); });
    if (!isAllInside) {
        return refused(what, "reaches out of it");
    }
    const auto exists = [&drawing](const std::optional<std::size_t>& box) {
        return !box || *box < drawing.boxes.size();
    };
    return exists(line.from) && exists(line.to) ? Status()
                                                : refused(what, "joins a box that is not there");
}

} // namespace

Status checkDrawing(const Drawing& drawing) {
    if (!(drawing.width > 0) || !(drawing.height > 0) || !std::isfinite(drawing.width) ||
        !std::isfinite(drawing.height)) {
        return Error{ErrorCode::InvalidInput, "The drawing has no size.", {}};
    }
    for (std::size_t i = 0; i < drawing.boxes.size(); ++i) {
        if (Status fine = checkBox(drawing, drawing.boxes[i], i + 1); !fine) {
            return fine;
        }
    }
    for (std::size_t i = 0; i < drawing.lines.size(); ++i) {
        if (Status fine = checkLine(drawing, drawing.lines[i], i + 1); !fine) {
            return fine;
        }
    }
    for (const DrawingText& text : drawing.texts) {
        if (!isInside(drawing, text.at)) {
            return refused("words " + text.words, "lie outside of it");
        }
    }
    return {};
}

std::vector<DrawingRow> tableOf(const Drawing& drawing) {
    std::vector<DrawingRow> rows;
    std::vector<bool> isJoined(drawing.boxes.size(), false);
    for (const DrawingLine& line : drawing.lines) {
        if (line.from && line.to) {
            isJoined[*line.from] = isJoined[*line.to] = true;
            rows.push_back(
                {drawing.boxes[*line.from].name, line.name, drawing.boxes[*line.to].name});
        }
    }
    for (std::size_t i = 0; i < drawing.boxes.size(); ++i) {
        if (!isJoined[i] && drawing.boxes[i].kind != DrawingBox::Knot) {
            rows.push_back({drawing.boxes[i].name, {}, {}});
        }
    }
    return rows;
}

std::size_t countOf(const Drawing& drawing, DrawingBox::Kind kind) {
    return static_cast<std::size_t>(std::ranges::count(drawing.boxes, kind, &DrawingBox::kind));
}

} // namespace bullace::report
