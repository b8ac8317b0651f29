// `bullace work` for weather and seasons: known answers from plain files, and plain words for what
// is wrong with one.
#include "process/programs.hpp"

#include <doctest/doctest.h>

using namespace bullace::test;

namespace {

bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

// McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291-300, Table 1, base 0 °C: the sums by both
// methods are 46.5 and 51.0.
TEST_CASE("degree-days of a plain table are those of McMaster and Wilhelm") {
    const std::string table = "date,least,greatest\n"
                              "2026-04-01,10,20\n2026-04-02,1,10\n2026-04-03,-2,8\n"
                              "2026-04-04,0,6\n2026-04-05,5,10\n2026-04-06,-5,5\n"
                              "2026-04-07,-7,-2\n2026-04-08,-10,-5\n2026-04-09,-2,10\n"
                              "2026-04-10,2,15\n";
    const Ran ran =
        console({"work", "degree-days", "-", "--unit", "C", "--lower", "0", "--json"}, table);
    CHECK(ran.status == 0);
    CHECK(says(ran.out, R"("method":"simple average of the day","sum":46.5)"));
    CHECK(says(ran.out, R"("method":"simple average, limits clamped","sum":51.0)"));
    CHECK(says(ran.out, R"("method":"double sine","sum":null)")); // the last day has no next one
    const Ran unasked = console({"work", "degree-days", "-"}, table);
    CHECK(unasked.status != 0);
    CHECK(says(unasked.err, "--unit C or --unit F"));
}

TEST_CASE("a file's fault is told with its line and column") {
    const Ran number =
        console({"work", "onset", "-"}, "accession,after,by\nA,150,153\nA,150,soon\n");
    CHECK(number.status != 0);
    CHECK(says(number.err, "line 3, column \"by\""));
    const Ran order = console({"work", "onset", "-"}, "after,by\n150,140\n");
    CHECK(order.status != 0);
    CHECK(says(order.err, "line 2"));
    CHECK(console({"work", "onset", "-"}, "").status != 0);
    CHECK(console({"work", "weather", "-", "--unit", "C"}, "date,least\n2026-01-01,3\n").status !=
          0);
    const Ran twice = console({"work", "degree-days", "-", "--unit", "C"},
                              "date,least,greatest\n2026-01-01,3,9\n2026-01-01,3,9\n");
    CHECK(says(twice.err, "twice"));
}

TEST_CASE("visits give onsets, and the difference to a reference is said in days") {
    std::string visits = "accession,vine,day,stage\n";
    const char* const late[] = {"2026-05-27", "2026-05-31", "2026-06-03"};
    const char* const early[] = {"2026-05-17", "2026-05-20", "2026-05-24"};
    int vine = 0;
    for (const std::string accession : {"Reference", "Early"}) {
        for (const char* day : accession == "Early" ? early : late) {
            const std::string name =
                "," + std::string("B1-01-") + std::to_string(++vine + 10) + ",";
            visits += accession + name + "2026-05-13,57\n";
            visits += accession + name + day + ",61\n";
        }
    }
    const Ran ran =
        console({"work", "onset", "-", "--reference", "Reference", "--json"},
                "accession,year,after,by\nReference,2026,147,151\nReference,2026,151,155\n"
                "Reference,2026,155,158\nEarly,2026,137,140\nEarly,2026,140,144\n"
                "Early,2026,144,148\n");
    CHECK(ran.status == 0);
    CHECK(says(ran.out, "days earlier, 95 %: "));
    const Ran read = console({"work", "onset", "-", "--stage", "61", "--json"}, visits);
    CHECK(read.status == 0);
    CHECK(says(read.out, R"("accession":"Early","year":2026,"vines":3)"));
}

TEST_CASE("bloom windows name what cannot be crossed, and pollen that must wait") {
    const Ran ran =
        console({"work", "bloom-overlap", "-", "--json"},
                "accession,sex,start after,start by,end after,end by\n"
                "M,male,120,123,128,131\nM,male,123,126,131,134\nM,male,126,129,134,137\n"
                "F,female,150,153,160,163\nF,female,153,156,163,166\n"
                "F,female,156,159,166,169\n");
    CHECK(ran.status == 0);
    CHECK(says(ran.out, R"("mother":"F","father":"M")"));
    CHECK_FALSE(says(ran.out, R"("mother":"M")"));
    CHECK(says(ran.out, R"("pollen of the year before":false)"));
}
