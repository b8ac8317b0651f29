#include "console/document.hpp"

#include "core/journal/json_value.hpp"

#include <cmath>
#include <cstdio>

namespace bullace::console {

namespace {

// What people read: six digits that count are enough, and no point behind a whole number.
std::string plainNumber(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.6g", value);
    return text;
}

} // namespace

DocumentList::DocumentList() = default;
DocumentList::~DocumentList() = default;
DocumentList::DocumentList(DocumentList&&) noexcept = default;
DocumentList& DocumentList::operator=(DocumentList&&) noexcept = default;

Document& DocumentList::add() {
    auto object = std::make_unique<Document>();
    Document& added = *object;
    items_.push_back(std::make_unique<Item>(Item{std::move(object)}));
    return added;
}

void DocumentList::add(double value) {
    items_.push_back(std::make_unique<Item>(
        Item{std::isfinite(value) ? Document::Value(value) : Document::Value()}));
}

void DocumentList::add(std::string_view text) {
    items_.push_back(std::make_unique<Item>(Item{std::string(text)}));
}

Document& Document::add(std::string_view name, Value value) {
    members_.emplace_back(std::string(name), std::move(value));
    return *this;
}

Document& Document::text(std::string_view name, std::string_view value) {
    return add(name, std::string(value));
}

Document& Document::number(std::string_view name, double value) {
    return add(name, std::isfinite(value) ? Value(value) : Value());
}

Document& Document::number(std::string_view name, const std::optional<double>& value) {
    return value ? number(name, *value) : add(name, Value());
}

Document& Document::count(std::string_view name, std::uint64_t value) {
    return whole(name, static_cast<std::int64_t>(value));
}

Document& Document::whole(std::string_view name, std::int64_t value) {
    return add(name, value);
}

Document& Document::truth(std::string_view name, bool value) {
    return add(name, value);
}

Document& Document::date(std::string_view name, const std::optional<CivilDate>& value) {
    return value ? text(name, writeDate(*value)) : add(name, Value());
}

Document& Document::estimate(std::string_view name,
                             const std::optional<statistics::Estimate>& value) {
    if (!value) {
        return add(name, Value());
    }
    Document& inner = object(name);
    inner.number("value", value->value).number("standard error", value->standardError);
    if (value->interval) {
        inner.number("low", value->interval->low).number("high", value->interval->high);
    }
    return *this;
}

Document& Document::interval(std::string_view name,
                             const std::optional<statistics::Interval>& value) {
    if (!value) {
        return add(name, Value());
    }
    object(name).number("low", value->low).number("high", value->high);
    return *this;
}

Document& Document::remarks(const Remarks& remarks) {
    DocumentList& sentences = list("remarks");
    for (const Remark& remark : remarks) {
        sentences.add(inEnglish(remark));
    }
    return *this;
}

Document& Document::object(std::string_view name) {
    auto inner = std::make_unique<Document>();
    Document& added = *inner;
    add(name, std::move(inner));
    return added;
}

DocumentList& Document::list(std::string_view name) {
    add(name, DocumentList());
    return std::get<DocumentList>(members_.back().second);
}

void Document::appendJson(std::string& out, const Value& value) {
    if (const auto* truth = std::get_if<bool>(&value)) {
        out += *truth ? "true" : "false";
    } else if (const auto* whole = std::get_if<std::int64_t>(&value)) {
        out += std::to_string(*whole);
    } else if (const auto* number = std::get_if<double>(&value)) {
        out += journal::valueToJson(journal::floatValue(*number));
    } else if (const auto* text = std::get_if<std::string>(&value)) {
        journal::appendJsonText(out, *text);
    } else if (const auto* object = std::get_if<std::unique_ptr<Document>>(&value)) {
        out += (*object)->json();
    } else if (const auto* list = std::get_if<DocumentList>(&value)) {
        out += '[';
        for (const auto& item : list->items_) {
            out += out.back() == '[' ? "" : ",";
            appendJson(out, item->value);
        }
        out += ']';
    } else {
        out += "null";
    }
}

std::string Document::json() const {
    std::string out = "{";
    for (const auto& [name, value] : members_) {
        out += out.size() == 1 ? "" : ",";
        journal::appendJsonText(out, name);
        out += ':';
        appendJson(out, value);
    }
    return out + "}";
}

void Document::appendPlain(std::string& out, const Value& value, std::size_t depth) {
    if (const auto* truth = std::get_if<bool>(&value)) {
        out += *truth ? " yes\n" : " no\n";
    } else if (const auto* whole = std::get_if<std::int64_t>(&value)) {
        out += " " + std::to_string(*whole) + "\n";
    } else if (const auto* number = std::get_if<double>(&value)) {
        out += " " + plainNumber(*number) + "\n";
    } else if (const auto* text = std::get_if<std::string>(&value)) {
        out += " " + *text + "\n";
    } else if (const auto* object = std::get_if<std::unique_ptr<Document>>(&value)) {
        out += "\n";
        (*object)->appendMembers(out, depth + 1);
    } else if (const auto* list = std::get_if<DocumentList>(&value)) {
        out += list->items_.empty() ? " none\n" : "\n";
        for (const auto& item : list->items_) {
            out += std::string(2 * (depth + 1), ' ') + "-";
            appendPlain(out, item->value, depth + 1);
        }
    } else {
        out += " cannot be said\n";
    }
}

void Document::appendMembers(std::string& out, std::size_t depth) const {
    for (const auto& [name, value] : members_) {
        out += std::string(2 * depth, ' ') + name + ":";
        appendPlain(out, value, depth);
    }
}

std::string Document::plainLines() const {
    std::string out;
    appendMembers(out, 0);
    return out;
}

} // namespace bullace::console
