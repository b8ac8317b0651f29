// What no page may have: a key that nobody can hear of, one that is too small, two that overlap,
// words that are cut.
#pragma once

#include <QStringList>

QT_BEGIN_NAMESPACE
class QQuickWindow;
QT_END_NAMESPACE

namespace bullace::quick {

struct AuditRules {
    qreal pxPerMm = 1;
    qreal leastMm = 9; // both sides of what can be touched
    qreal edgeMm = 3;  // nothing that can be pressed nearer to the glass's edge
};

// Walks the items that are seen in `window` and lists what is wrong, each as one line with the
// item's objectName or type and where it is; empty where nothing is:
//   - whatever takes the keyboard's focus by Tab, or can be pressed, has an accessible name;
//   - what can be pressed is at least leastMm wide and high with its touch area, and edgeMm from
//   the window's edge;
//   - no two of those lie over one another (their drawn parts; touch areas may meet);
//   - no words lie on a key that is not theirs;
//   - no words are truncated, larger than their box, or reach out of the window; but for a table's
//   cells (objectName cellWords), whose table says the whole of one elsewhere.
// Assistive technology is switched on for the process, for Qt keeps the names only then.
[[nodiscard]] QStringList faultsOf(QQuickWindow& window, const AuditRules& rules);

} // namespace bullace::quick
