// The pages of a walk by fingers and by keys; what was tapped is what stands in the journal.
#include "support/tablet_glass.hpp"

#include <doctest/doctest.h>

using namespace bullace;
using namespace bullace::test;

TEST_CASE("from the first start to the first value, on a block typed as rows × vines") {
    TempFolder folder;
    FixedClock clock;
    TabletGlass tablet(folder.path(), clock);
    tablet.setUp();
    tablet.tapText(QStringLiteral("Somebody else"));
    tablet.type(QStringLiteral("Ida"));
    tablet.press(Qt::Key_Return);
    tablet.tapText(QStringLiteral("Block F1"));
    tablet.tapText(QStringLiteral("Vigour"));
    tablet.tapText(QStringLiteral("F1 row 2"));
    tablet.tapText(QStringLiteral("Vine 12"));
    REQUIRE(tablet.app().page() == tablet::TabletApp::Stop);
    tablet.tapText(QStringLiteral("7"));
    CHECK(tablet.at("obs/F1-02-12/2026-05-12/vigour") == "settled 7");
    CHECK(tablet.book().walk()->here().position == "F1-02-11");
    for (const QString& fault : tablet.faults()) {
        FAIL_CHECK(fault.toStdString());
    }
    CHECK(tablet.picture().save(QStringLiteral(BULLACE_PICTURES "/tablet-first.png")));
}
