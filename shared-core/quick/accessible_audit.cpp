#include "quick/accessible_audit.hpp"

#include "quick/touch_key.hpp"

#include <QAccessible>
#include <QQuickItem>
#include <QQuickWindow>

#include <algorithm>
#include <vector>

namespace bullace::quick {

namespace {

// Half a pixel is what rounding makes.
constexpr qreal kSlackPx = 0.75;

// An item on the page, and what of it is seen: a Flickable cuts what is scrolled away.
struct Seen {
    QQuickItem* item;
    QRectF box;
    QRectF window;
};

void collect(QQuickItem* from, const QRectF& window, std::vector<Seen>& into) {
    if (!from->isVisible() || qFuzzyIsNull(from->opacity())) {
        return;
    }
    const QRectF box = from->mapRectToScene(QRectF(0, 0, from->width(), from->height()));
    const QRectF inside = from->clip() ? window.intersected(box) : window;
    into.push_back({from, box, window});
    const auto children = from->childItems();
    for (QQuickItem* child : children) {
        collect(child, inside, into);
    }
}

constexpr qreal kEmptyShare = 0.22; // of a line's height, above and below

bool isText(const QQuickItem& item) {
    return item.inherits("QQuickText");
}

bool isPressable(const QQuickItem& item) {
    return qobject_cast<const TouchKey*>(&item) != nullptr || item.inherits("QQuickAbstractButton");
}

QString nameOf(QQuickItem& item) {
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(&item);
    return face == nullptr ? QString() : face->text(QAccessible::Name);
}

QString lineFor(const Seen& seen, const QString& what) {
    const QString called = seen.item->objectName().isEmpty()
                               ? QString::fromLatin1(seen.item->metaObject()->className())
                               : seen.item->objectName();
    return QStringLiteral("%1 \"%2\" at %3,%4 %5x%6: %7")
        .arg(called, seen.item->property("text").toString())
        .arg(seen.box.x(), 0, 'f', 0)
        .arg(seen.box.y(), 0, 'f', 0)
        .arg(seen.box.width(), 0, 'f', 0)
        .arg(seen.box.height(), 0, 'f', 0)
        .arg(what);
}

void auditKey(const Seen& seen, const AuditRules& rules, QStringList& faults) {
    const auto* key = qobject_cast<const TouchKey*>(seen.item);
    const qreal reach = key == nullptr ? 0 : 2 * key->reach();
    const qreal least = rules.leastMm * rules.pxPerMm - kSlackPx;
    if (seen.box.width() + reach < least || seen.box.height() + reach < least) {
        faults << lineFor(seen, QStringLiteral("smaller than %1 mm").arg(rules.leastMm));
    }
    const qreal edge = rules.edgeMm * rules.pxPerMm - kSlackPx;
    const QRectF allowed =
        QRectF(QPointF(), seen.item->window()->size()).adjusted(edge, edge, -edge, -edge);
    const QRectF shown = seen.box.intersected(seen.window);
    if (!allowed.contains(shown)) {
        faults << lineFor(seen, QStringLiteral("nearer than %1 mm to the edge").arg(rules.edgeMm));
    }
}

void auditText(const Seen& seen, QStringList& faults) {
    QQuickItem& item = *seen.item;
    if (item.property("text").toString().isEmpty()) {
        return;
    }
    // A table's cell may be cut: the table says the whole of the one where the person is.
    if (item.property("truncated").toBool() && item.objectName() != QLatin1String("cellWords")) {
        faults << lineFor(seen, QStringLiteral("cut short"));
    }
    const qreal width = item.property("contentWidth").toReal();
    const qreal height = item.property("contentHeight").toReal();
    if (width > item.width() + kSlackPx || height > item.height() + kSlackPx) {
        faults << lineFor(
            seen,
            QStringLiteral("its words take %1x%2").arg(width, 0, 'f', 0).arg(height, 0, 'f', 0));
    }
    const bool isScrolled = seen.window.size() != QSizeF(item.window()->size());
    const QRectF room = seen.window.adjusted(-kSlackPx, -kSlackPx, kSlackPx, kSlackPx);
    if (!isScrolled && !room.contains(seen.box)) {
        faults << lineFor(seen, QStringLiteral("reaches out of the window"));
    }
}

void auditOverlaps(const std::vector<Seen>& keys, QStringList& faults) {
    for (std::size_t i = 0; i < keys.size(); ++i) {
        for (std::size_t j = i + 1; j < keys.size(); ++j) {
            const QRectF both =
                keys[i].box.intersected(keys[i].window) & keys[j].box.intersected(keys[j].window);
            if (both.width() > kSlackPx && both.height() > kSlackPx) {
                faults << lineFor(
                    keys[i], QStringLiteral("lies over ") + lineFor(keys[j], QStringLiteral("it")));
            }
        }
    }
}

// Where a text's words are, aligned as it says.
QRectF wordsOf(const Seen& seen) {
    const qreal width = seen.item->property("contentWidth").toReal();
    const qreal height = seen.item->property("contentHeight").toReal();
    const int across = seen.item->property("effectiveHorizontalAlignment").toInt();
    const int down = seen.item->property("verticalAlignment").toInt();
    QRectF words(seen.box.topLeft(), QSizeF(width, height));
    if ((across & Qt::AlignRight) != 0) {
        words.moveRight(seen.box.right());
    } else if ((across & Qt::AlignHCenter) != 0) {
        words.moveLeft(seen.box.center().x() - width / 2);
    }
    if ((down & Qt::AlignVCenter) != 0) {
        words.moveTop(seen.box.center().y() - height / 2);
    } else if ((down & Qt::AlignBottom) != 0) {
        words.moveBottom(seen.box.bottom());
    }
    // Above capitals and below the line there is room in which nothing is drawn.
    const int lines = std::max(1, seen.item->property("lineCount").toInt());
    const qreal empty = kEmptyShare * height / lines;
    return words.adjusted(0, empty, 0, -empty).intersected(seen.window);
}

// Words under or over a key that is not theirs.
void auditCovered(const std::vector<Seen>& texts,
                  const std::vector<Seen>& keys,
                  QStringList& faults) {
    for (const Seen& text : texts) {
        const QRectF words = wordsOf(text);
        for (const Seen& key : keys) {
            const QRectF both = words.intersected(key.box.intersected(key.window));
            const bool isOwn = key.item->isAncestorOf(text.item);
            if (!isOwn && both.width() > 2 * kSlackPx && both.height() > 2 * kSlackPx) {
                faults << lineFor(
                    text, QStringLiteral("is on ") + lineFor(key, QStringLiteral("not its own")));
            }
        }
    }
}

} // namespace

QStringList faultsOf(QQuickWindow& window, const AuditRules& rules) {
    QAccessible::setActive(true);
    std::vector<Seen> all;
    collect(window.contentItem(), QRectF(QPointF(), window.size()), all);
    QStringList faults;
    std::vector<Seen> keys;
    std::vector<Seen> texts;
    for (const Seen& seen : all) {
        const bool presses = isPressable(*seen.item);
        if ((presses || seen.item->activeFocusOnTab()) && nameOf(*seen.item).trimmed().isEmpty()) {
            faults << lineFor(seen, QStringLiteral("has no accessible name"));
        }
        if (isText(*seen.item)) {
            auditText(seen, faults);
            texts.push_back(seen);
        }
        if (presses && seen.box.intersects(seen.window)) {
            keys.push_back(seen);
            auditKey(seen, rules, faults);
        }
    }
    auditOverlaps(keys, faults);
    auditCovered(texts, keys, faults);
    return faults;
}

} // namespace bullace::quick
