#include "quick/wire_item.hpp"

#include "quick/theme.hpp"

#include <QPainter>
#include <QQmlEngine>

#include <algorithm>

namespace bullace::quick {

namespace {

// The picture has to stay one: its words grow by less than those to be read one by one.
qreal mostGrowth(const Theme& theme) {
    return theme.isSmallGlass() ? 1.0 : 1.3;
}

WireStyle styleOf(const Theme& theme) {
    return {theme.ink(),
            theme.paper(),
            theme.family(),
            std::min(theme.smallPx(), qRound(mostGrowth(theme) * theme.leastSmallPx())),
            std::min(theme.labelPx(), qRound(mostGrowth(theme) * theme.leastLabelPx())),
            theme.pxPerMm()};
}

Theme* themeFor(const QObject& item) {
    QQmlEngine* engine = qmlEngine(&item);
    return engine == nullptr ? nullptr : &themeOf(*engine);
}

int roleNamed(const QAbstractItemModel& model, const QByteArray& name) {
    return model.roleNames().key(name, -1);
}

} // namespace

WireItem::WireItem(QQuickItem* parent) : QQuickPaintedItem(parent) {}

void WireItem::setVines(QAbstractItemModel* model) {
    if (model == model_) {
        return;
    }
    if (model_ != nullptr) {
        model_->disconnect(this);
    }
    model_ = model;
    if (model_ != nullptr) {
        connect(model_, &QAbstractItemModel::dataChanged, this, &WireItem::read);
        connect(model_, &QAbstractItemModel::rowsInserted, this, &WireItem::read);
        connect(model_, &QAbstractItemModel::rowsRemoved, this, &WireItem::read);
        connect(model_, &QAbstractItemModel::rowsMoved, this, &WireItem::read);
        connect(model_, &QAbstractItemModel::layoutChanged, this, &WireItem::read);
        connect(model_, &QAbstractItemModel::modelReset, this, &WireItem::read);
    }
    read();
    emit vinesChanged();
}

void WireItem::read() {
    std::vector<WireVine> vines;
    const int count = model_ == nullptr ? 0 : model_->rowCount();
    const auto value = [this](int row, const char* role) {
        return model_->index(row, 0).data(roleNamed(*model_, role));
    };
    for (int row = 0; row < count; ++row) {
        WireVine vine;
        vine.place = value(row, "place").toString();
        vine.tag = value(row, "tag").toString();
        vine.kind = static_cast<WireVine::Kind>(std::clamp(value(row, "kind").toInt(), 0, 4));
        vine.isMarked = value(row, "isMarked").toBool();
        vine.isHere = value(row, "isHere").toBool();
        vines.push_back(vine);
    }
    if (vines != scene_.vines) {
        scene_.vines = std::move(vines);
        renew();
    }
}

void WireItem::setDirection(int value) {
    const int inside = value < 0 ? -1 : 1;
    if (inside != scene_.direction) {
        scene_.direction = inside;
        renew();
    }
}

void WireItem::setSide(Side value) {
    if (value != side()) {
        scene_.side = static_cast<WireScene::Side>(value);
        renew();
    }
}

void WireItem::setFirstPost(bool value) {
    if (value != scene_.hasFirstPost) {
        scene_.hasFirstPost = value;
        renew();
    }
}

void WireItem::setLastPost(bool value) {
    if (value != scene_.hasLastPost) {
        scene_.hasLastPost = value;
        renew();
    }
}

int WireItem::slotCount() const {
    return static_cast<int>(wireSlots(scene_, style(), size()).size());
}

QRectF WireItem::slotBox(int slot) const {
    const auto drawn = wireSlots(scene_, style(), size());
    const auto index = static_cast<std::size_t>(slot);
    return slot >= 0 && index < drawn.size() ? drawn[index].box : QRectF();
}

int WireItem::slotVine(int slot) const {
    const auto drawn = wireSlots(scene_, style(), size());
    const auto index = static_cast<std::size_t>(slot);
    return slot >= 0 && index < drawn.size() ? drawn[index].vine : -1;
}

QString WireItem::slotName(int slot) const {
    const int vine = slotVine(slot);
    return vine < 0 ? QString() : wordsOf(scene_.vines[static_cast<std::size_t>(vine)]);
}

QString WireItem::wordsOf(const WireVine& vine) const {
    QStringList words(tr("Vine %1").arg(vine.place));
    if (vine.isHere) {
        words << tr("you stand here");
    }
    if (vine.kind == WireVine::Missing) {
        words << tr("missing");
    } else if (vine.kind == WireVine::Dead) {
        words << tr("dead");
    } else if (vine.kind == WireVine::NotObserved) {
        words << tr("not observed");
    } else if (vine.kind == WireVine::WalkedPast) {
        words << tr("walked past");
    }
    if (!vine.tag.isEmpty()) {
        words << vine.tag;
    }
    if (vine.isMarked) {
        words << tr("marked");
    }
    return words.join(QStringLiteral(", "));
}

QString WireItem::summary() const {
    QStringList sentences;
    for (const WireVine& vine : scene_.vines) {
        sentences << wordsOf(vine) + QLatin1Char('.');
    }
    return sentences.join(QLatin1Char(' '));
}

WireStyle WireItem::style() const {
    return theme_ == nullptr ? WireStyle{} : styleOf(*theme_);
}

void WireItem::paint(QPainter* painter) {
    paintWire(*painter, scene_, style(), size());
}

void WireItem::componentComplete() {
    QQuickPaintedItem::componentComplete();
    theme_ = themeFor(*this);
    if (theme_ != nullptr) {
        connect(theme_, &Theme::changed, this, &WireItem::renew);
    }
    renew();
}

void WireItem::geometryChange(const QRectF& now, const QRectF& before) {
    QQuickPaintedItem::geometryChange(now, before);
    if (now.size() != before.size()) {
        renew();
    }
}

void WireItem::renew() {
    setImplicitHeight(wireHeight(scene_, style(), width()));
    update();
    emit sceneChanged();
}

void RowItem::setVineCount(int value) {
    if (value != vineCount_) {
        vineCount_ = value;
        update();
        emit vineCountChanged();
    }
}

void RowItem::componentComplete() {
    QQuickPaintedItem::componentComplete();
    theme_ = themeFor(*this);
    if (theme_ != nullptr) {
        connect(theme_, &Theme::changed, this, [this] { update(); });
    }
}

void RowItem::paint(QPainter* painter) {
    paintRow(*painter, vineCount_, theme_ == nullptr ? WireStyle{} : styleOf(*theme_), size());
}

} // namespace bullace::quick
