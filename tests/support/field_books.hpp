// A tablet's book on a real file, with a station typed in few words: for tests of the walk.
#pragma once

#include "field/field_book.hpp"

#include "core/journal/json_value.hpp"
#include "store/json_reader.hpp"
#include "support/fixed_clock.hpp"
#include "support/temp_folder.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <sstream>
#include <string>
#include <vector>

namespace bullace::test {

// One line of an export by the office.
inline std::string
officeLine(std::uint64_t seq, const std::string& subject, const std::string& json) {
    return R"({"origin":"s00000000000000ff.1","seq":)" + std::to_string(seq) + R"(,"count":)" +
           std::to_string(seq) + R"(,"author":"hq","kind":"catalog","subject":")" + subject +
           R"(","value":)" + json + R"(,"over":[]})" + "\n";
}

class Book {
public:
    Book() { reopen(); }

    field::FieldBook* operator->() { return book_.get(); }
    field::FieldBook& operator*() { return *book_; }
    field::Walk& walk() {
        REQUIRE(book_->walk() != nullptr);
        return *book_->walk();
    }
    [[nodiscard]] std::string path() const { return folder_.file("journal.db"); }
    FixedClock& clock() { return clock_; }

    void close() { book_.reset(); }
    void reopen() {
        close();
        auto opened = field::FieldBook::open(path(), "Etc/GMT+5", clock_);
        REQUIRE_MESSAGE(opened.ok(), (opened ? "" : opened.error().message));
        book_ = std::move(*opened);
    }
    // What the office says; each line a subject and its JSON.
    void office(const std::vector<std::pair<std::string, std::string>>& says) {
        std::string lines;
        for (const auto& [subject, json] : says) {
            lines += officeLine(++officeSeq_, subject, json);
        }
        std::istringstream in(lines);
        const auto report = book_->database().importLines(in, "office", {});
        REQUIRE_MESSAGE(report.ok(), (report ? "" : report.error().message));
        REQUIRE(report->refusedCount == 0);
        REQUIRE(book_->reload().ok());
    }
    // A block B2 with rows of `vines` vines each, and a round over it with these fields.
    void plant(unsigned rows,
               unsigned vines,
               const std::vector<std::pair<std::string, std::string>>& round) {
        std::string list;
        for (unsigned row = 1; row <= rows; ++row) {
            list += (list.empty() ? "[" : ",[") + std::to_string(row) + "," +
                    std::to_string(vines) + "]";
        }
        std::vector<std::pair<std::string, std::string>> says{
            {"block/B2/rows", "[" + list + "]"},
            {"round/r1/title", R"("Spring walk")"},
            {"round/r1/where", R"(["B2-*"])"}};
        for (const auto& [fieldName, json] : round) {
            says.emplace_back("round/r1/" + fieldName, json);
        }
        office(says);
    }
    void begin(field::WalkWish wish = {}) {
        if (wish.author.empty()) {
            wish.author = "im";
        }
        const walk::Round* round = book_->catalogue().round("r1");
        REQUIRE(round != nullptr);
        auto plan =
            field::planWalk(book_->database(), book_->catalogue(), *round, wish, book_->today());
        REQUIRE_MESSAGE(plan.ok(), (plan ? "" : plan.error().message));
        const Status begun = book_->beginWalk(std::move(*plan));
        REQUIRE_MESSAGE(begun.ok(), (begun ? "" : begun.error().message));
    }
    void note(double value) {
        const Status noted = walk().note(journal::numberValue(value));
        REQUIRE_MESSAGE(noted.ok(), (noted ? "" : noted.error().message));
    }
    [[nodiscard]] std::string here() { return walk().here().position; }
    // "settled 65"; empty for a subject without heads.
    [[nodiscard]] std::string says(const std::string& subject) {
        const auto row = book_->database().state(subject);
        REQUIRE(row.ok());
        return *row ? std::string(merge::stateWord((*row)->state)) +
                          ((*row)->valueJson.empty() ? "" : " " + (*row)->valueJson)
                    : std::string{};
    }
    // On the day of the clock at the beginning.
    [[nodiscard]] std::string at(const std::string& position, const std::string& descriptor) {
        return says("obs/" + position + "/2026-05-12/" + descriptor);
    }
    // Every observation that stands.
    [[nodiscard]] std::string observations() {
        std::string all;
        REQUIRE(book_->database()
                    .eachState("obs",
                               [&](const store::StateRow& row) {
                                   all += row.valueJson.empty()
                                              ? ""
                                              : row.subject + " " + row.valueJson + "\n";
                                   return true;
                               })
                    .ok());
        return all;
    }

private:
    TempFolder folder_;
    FixedClock clock_;
    std::unique_ptr<field::FieldBook> book_;
    std::uint64_t officeSeq_ = 0;
};

} // namespace bullace::test
