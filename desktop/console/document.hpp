// One answer as a tree of names and values, printed as JSON for programs or as plain lines for
// people. A number that is not there is null, and never NaN or infinite.
#pragma once

#include "core/base/civil_date.hpp"
#include "core/base/remark.hpp"
#include "core/statistics/estimate.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace bullace::console {

class Document;

// Items of one kind under one name.
class DocumentList {
public:
    DocumentList();
    DocumentList(DocumentList&&) noexcept;
    DocumentList& operator=(DocumentList&&) noexcept;
    ~DocumentList();

    Document& add(); // an object, to be filled
    void add(double value);
    void add(std::string_view text);

private:
    friend class Document;
    struct Item;
    std::vector<std::unique_ptr<Item>> items_;
};

// Members stand in the order in which they are added; each name once.
class Document {
public:
    Document& text(std::string_view name, std::string_view value);
    // What is not finite becomes null.
    Document& number(std::string_view name, double value);
    Document& number(std::string_view name, const std::optional<double>& value);
    Document& count(std::string_view name, std::uint64_t value);
    Document& whole(std::string_view name, std::int64_t value);
    Document& truth(std::string_view name, bool value);
    Document& date(std::string_view name, const std::optional<CivilDate>& value);
    // {"value", "standard error", "low", "high"}; an unbounded end is null. Null where there is
    // none.
    Document& estimate(std::string_view name, const std::optional<statistics::Estimate>& value);
    Document& interval(std::string_view name, const std::optional<statistics::Interval>& value);
    Document& remarks(const Remarks& remarks); // under "remarks", as sentences
    Document& object(std::string_view name);
    DocumentList& list(std::string_view name);

    [[nodiscard]] std::string json() const;       // without spaces
    [[nodiscard]] std::string plainLines() const; // "name: value", what lies inside is indented

private:
    friend class DocumentList;
    using Value = std::variant<std::monostate,
                               bool,
                               std::int64_t,
                               double,
                               std::string,
                               std::unique_ptr<Document>,
                               DocumentList>;
    Document& add(std::string_view name, Value value);
    static void appendJson(std::string& out, const Value& value);
    static void appendPlain(std::string& out, const Value& value, std::size_t depth);
    void appendMembers(std::string& out, std::size_t depth) const;

    std::vector<std::pair<std::string, Value>> members_;
};

struct DocumentList::Item {
    Document::Value value;
};

} // namespace bullace::console
