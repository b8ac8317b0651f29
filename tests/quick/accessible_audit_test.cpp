// The list of a page's faults finds each kind of fault, and nothing where there is none.
#include "quick/accessible_audit.hpp"

#include "support/screen.hpp"

#include <doctest/doctest.h>

using bullace::support::Screen;

namespace {

QStringList faultsIn(const QByteArray& body) {
    Screen screen("import QtQuick\nimport Bullace.Controls\nItem {\n" + body + "\n}");
    return bullace::quick::faultsOf(screen.window(), {screen.theme().pxPerMm(), 9, 3});
}

bool hasFault(const QStringList& faults, const char* words) {
    return faults.size() == 1 && faults.first().contains(QString::fromLatin1(words));
}

} // namespace

TEST_CASE("a sound page has no faults") {
    CHECK(
        faultsIn(
            R"(FieldKey { text: "Bloom"; x: 50; y: 50 } FieldLabel { text: "Row 7"; x: 50; y: 300 })")
            .isEmpty());
}

TEST_CASE("a key without a name is a fault") {
    CHECK(hasFault(faultsIn("TouchKey { x: 50; y: 50; width: 100; height: 100 }"),
                   "no accessible name"));
    CHECK(hasFault(faultsIn("FieldKey { x: 50; y: 50 }"), "no accessible name"));
}

TEST_CASE("an item that Tab reaches without a name is a fault") {
    CHECK(hasFault(faultsIn("Item { activeFocusOnTab: true; width: 10; height: 10 }"),
                   "no accessible name"));
}

TEST_CASE("a key that is too small for a finger is a fault") {
    CHECK(hasFault(
        faultsIn(R"(FieldKey { text: "."; x: 50; y: 50; width: 30; height: 100; isSnug: true })"),
        "smaller than 9 mm"));
}

TEST_CASE("a key at the edge of the glass is a fault") {
    CHECK(hasFault(faultsIn(R"(FieldKey { text: "Next"; x: 2; y: 50 })"), "to the edge"));
}

TEST_CASE("two keys over one another are a fault") {
    CHECK(hasFault(
        faultsIn(R"(FieldKey { text: "A"; x: 50; y: 50 } FieldKey { text: "B"; x: 140; y: 60 })"),
        "lies over"));
}

TEST_CASE("words that lie on a key that is not theirs are a fault") {
    CHECK(hasFault(
        faultsIn(
            R"(FieldKey { text: "A"; x: 50; y: 50 } FieldLabel { text: "Row 7"; x: 60; y: 60 })"),
        "is on FieldKey"));
}

TEST_CASE("words that are cut, too long for their box, or outside of the glass are faults") {
    CHECK(hasFault(
        faultsIn(R"(Text { text: "full bloom of all vines"; width: 40; elide: Text.ElideRight })"),
        "cut short"));
    CHECK(
        hasFault(faultsIn(R"(FieldLabel { text: "transplanting"; width: 20 })"), "its words take"));
    CHECK(
        hasFault(faultsIn(R"(FieldLabel { text: "Row 7"; x: 1030; y: 50 })"), "out of the window"));
}

TEST_CASE("what is not seen is no fault") {
    CHECK(faultsIn("TouchKey { visible: false; width: 5; height: 5 }").isEmpty());
}
