// The book of crosses: counts and dates, honest rates, what is due, and the names of a vine.
#include "core/breeding/cross_book.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace bullace;
using namespace bullace::breeding;

namespace {

CivilDate day(const char* text) {
    return *readDate(text);
}

const std::vector<CrossHead> kHeads{
    {"C1", "F1", "P1", 2025}, {"C2", "F1", "P2", 2025}, {"C3", "F2", "", 2026}};

} // namespace

TEST_CASE("counts of one step are added up, with their first and last day") {
    const std::vector<BookEvent> events{
        {"C1", BookStep::Pollinated, day("2025-05-22"), 40},
        {"C1", BookStep::Pollinated, day("2025-05-20"), 60},
        {"C1", BookStep::Set, day("2025-06-10"), 21},
        {"C1", BookStep::FirstFlower, day("2028-05-20"), 3, FlowerSex::Female},
        {"C1", BookStep::FirstFlower, day("2028-05-21"), {}, FlowerSex::Perfect}};
    const auto book = crossBook(kHeads, events);
    REQUIRE(book.ok());
    const BookEntry& entry = book->at(0);
    CHECK(entry.at(BookStep::Pollinated).count == 100);
    CHECK(entry.at(BookStep::Pollinated).first == day("2025-05-20"));
    CHECK(entry.at(BookStep::Pollinated).last == day("2025-05-22"));
    CHECK(entry.female == 3);
    CHECK(entry.perfect == 1);
    CHECK(entry.remarks.empty());
    CHECK_FALSE(book->at(1).at(BookStep::Set).count);
}

TEST_CASE("a count that grows, and a step dated too early, are told") {
    const auto book =
        crossBook(kHeads,
                  std::vector<BookEvent>{{"C1", BookStep::Seeds, day("2025-09-20"), 40},
                                         {"C1", BookStep::Sinkers, day("2025-09-19"), 41}});
    REQUIRE(book.ok());
    REQUIRE(book->at(0).remarks.size() == 2);
    CHECK(inEnglish(book->at(0).remarks[0]) ==
          "C1: a count of 41 follows one of 40, which it cannot be a part of.");
}

TEST_CASE("a wrong book is refused by cross") {
    const auto message = [](std::vector<CrossHead> heads, std::vector<BookEvent> events) {
        const auto book = crossBook(heads, events);
        return book.ok() ? "" : book.error().message;
    };
    CHECK(message({{"C1", "", "", 0}, {"C1", "", "", 0}}, {}) == "The cross C1 is given twice.");
    CHECK(message({}, {{"C9", BookStep::Set, day("2025-06-10"), 1}}) ==
          "There is no cross C9 in the book.");
    CHECK(message(kHeads, {{"C1", BookStep::Set, day("2025-06-10"), -1}}).find("below 0") !=
          std::string::npos);
    CHECK(message(kHeads, {{"C1", BookStep::Set, CivilDate{}, 1}}).find("calendar") !=
          std::string::npos);
}

TEST_CASE("the rate of one cross has exact limits") {
    const auto book =
        crossBook(kHeads,
                  std::vector<BookEvent>{{"C1", BookStep::Pollinated, day("2025-05-20"), 10},
                                         {"C1", BookStep::Set, day("2025-06-10"), 0}});
    const auto rates = successRates(*book, BookStep::Pollinated, BookStep::Set, BookGroup::Mother);
    REQUIRE(rates.size() == 2);
    CHECK(rates[0].group == "F1");
    CHECK(rates[0].crosses == 1);
    CHECK(rates[0].leftOut == 1);
    // None of ten: 1 - 0.025^(1/10) = 0.3085 (Clopper & Pearson 1934).
    CHECK(rates[0].rate->interval->low == 0);
    CHECK(rates[0].rate->interval->high == doctest::Approx(1 - std::pow(0.025, 0.1)).epsilon(1e-9));
    CHECK_FALSE(rates[1].rate);
}

TEST_CASE("crosses that differ more than chance widen the limits of their common rate") {
    const auto rateOf = [](std::int64_t one, std::int64_t other) {
        const auto book =
            crossBook(kHeads,
                      std::vector<BookEvent>{{"C1", BookStep::Pollinated, day("2025-05-20"), 100},
                                             {"C2", BookStep::Pollinated, day("2025-05-20"), 100},
                                             {"C1", BookStep::Set, day("2025-06-10"), one},
                                             {"C2", BookStep::Set, day("2025-06-10"), other}});
        return successRates(*book, BookStep::Pollinated, BookStep::Set, BookGroup::Year).at(0);
    };
    const SuccessRate alike = rateOf(20, 20);
    const SuccessRate apart = rateOf(5, 35);
    CHECK(alike.rate->value == 0.2);
    CHECK(apart.rate->value == 0.2);
    CHECK(*alike.heterogeneity == 0);
    // Two crosses 15 off of 20 each: 2 × 225 / 16.
    CHECK(*apart.heterogeneity == doctest::Approx(28.125));
    CHECK(apart.rate->interval->high - apart.rate->interval->low >
          alike.rate->interval->high - alike.rate->interval->low);
    CHECK(apart.rate->interval->low >= 0);
    CHECK(rateOf(0, 0).rate->value == 0);
    CHECK(rateOf(100, 100).rate->interval->high == doctest::Approx(1));
}

TEST_CASE("what is due follows from the last step done") {
    const std::vector<BookEvent> events{{"C1", BookStep::Pollinated, day("2025-05-20"), 40},
                                        {"C2", BookStep::Pollinated, day("2025-05-20"), 40},
                                        {"C2", BookStep::Set, day("2025-06-05"), 9},
                                        {"C3", BookStep::Stratified, day("2025-11-20"), 30}};
    const auto book = crossBook(kHeads, events);
    const auto june = dueWork(*book, day("2025-06-01"));
    REQUIRE(june.size() == 1);
    CHECK(june[0].act == DueAct::BagsOff);
    CHECK(june[0].from == day("2025-06-03"));
    const auto all = dueWork(*book, day("2026-02-15"));
    REQUIRE(all.size() == 3);
    CHECK(all[1].act == DueAct::Harvest);
    // 90 days after 20 November.
    CHECK(all[2].act == DueAct::TakeOut);
    CHECK(all[2].from == day("2026-02-18"));
    CHECK(inEnglish(all[2].reason).find("cold for 90 days") != std::string::npos);
}

TEST_CASE("a seedling is found under each of its names") {
    const std::vector<NameLink> links{{"C1", "B2-07-14", true},
                                      {"C1", "B2-07-15", true},
                                      {"B2-07-14", "S101", false},
                                      {"S101", "Cultivar X", false}};
    const std::vector<std::string> chain{"C1", "B2-07-14", "S101", "Cultivar X"};
    CHECK(nameChain(links, "S101").value() == chain);
    CHECK(nameChain(links, "B2-07-14").value() == chain);
    CHECK(nameChain(links, "C1").value() == std::vector<std::string>{"C1"});
    CHECK(nameChain(links, "unknown").value() == std::vector<std::string>{"unknown"});
    CHECK(nameChain(std::vector<NameLink>{{"a", "b", false}, {"b", "a", false}}, "a")
              .error()
              .message == "The names of a go in a circle.");
    CHECK(nameChain(std::vector<NameLink>{{"a", "b", false}, {"a", "c", false}}, "a")
              .error()
              .message.find("a is said to have become b and c") == 0);
    CHECK(nameChain(std::vector<NameLink>{{"a", "c", false}, {"b", "c", false}}, "c")
              .error()
              .message.find("c is said to have been a and b") == 0);
}
