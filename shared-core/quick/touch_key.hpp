// Everything on the glass that acts when it is tapped: the rules of touching, once, for all keys of
// both apps.
#pragma once

#include <QPointF>
#include <QQuickItem>
#include <QtQml/qqmlregistration.h>

#include <optional>

namespace bullace::quick {

// Acts on release inside the key, never on the press. A contact shorter than 50 ms is a drop or a
// sleeve and is ignored (Matero & Colley 2012, DIS: 99.7 % of meant touches last 70 to 400 ms); a
// mouse has no such rule. Where `guardsRepeat` is set a second tap within 150 ms of the last is
// ignored. Times are those of the events, never of a clock. One contact at a time: others on the
// same key are ignored until it is gone. With the focus, Space and Enter act.
class TouchKey : public QQuickItem {
    Q_OBJECT
    QML_ELEMENT
    // Whether a contact is on it now, and would act if it were lifted here.
    Q_PROPERTY(bool isDown READ isDown NOTIFY isDownChanged)
    // For Next and its like, not for digits: "11" is typed by two quick taps.
    Q_PROPERTY(bool guardsRepeat READ guardsRepeat WRITE setGuardsRepeat NOTIFY guardsRepeatChanged)
    // Pixels by which it can be touched beyond its edges; half the gap, so that neighbours' areas
    // meet.
    // The shortest contact that is heard, milliseconds: longer on wet glass, where drops lie.
    Q_PROPERTY(int dwellMs READ dwellMs WRITE setDwellMs NOTIFY dwellMsChanged)
    Q_PROPERTY(qreal reach READ reach WRITE setReach NOTIFY reachChanged)

public:
    static constexpr quint64 kShortestTouchMs = 50;
    static constexpr quint64 kRepeatMs = 150;

    explicit TouchKey(QQuickItem* parent = nullptr);

    [[nodiscard]] bool isDown() const { return isDown_; }
    [[nodiscard]] bool guardsRepeat() const { return guardsRepeat_; }
    void setGuardsRepeat(bool value);
    [[nodiscard]] int dwellMs() const { return static_cast<int>(dwellMs_); }
    void setDwellMs(int value);
    [[nodiscard]] qreal reach() const { return reach_; }
    void setReach(qreal value);

    [[nodiscard]] bool contains(const QPointF& point) const override;

    // As if it had been tapped: for hardware keys and for assistive technology. Does nothing where
    // it is not enabled.
    Q_INVOKABLE void tap();

signals:
    void tapped();
    void isDownChanged();
    void guardsRepeatChanged();
    void dwellMsChanged();
    void reachChanged();

protected:
    void touchEvent(QTouchEvent* event) override;
    void touchUngrabEvent() override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseUngrabEvent() override;
    void keyPressEvent(QKeyEvent* event) override;
    void itemChange(ItemChange change, const ItemChangeData& value) override;

private:
    void follow(const QEventPoint& point, quint64 timeMs);
    void setDown(bool value);
    void letGo();
    void act(quint64 timeMs);

    bool isDown_ = false;
    bool guardsRepeat_ = false;
    qreal reach_ = 0;
    quint64 dwellMs_ = kShortestTouchMs;
    std::optional<int> contact_; // the touch point that it follows
    quint64 touchedMs_ = 0;
    std::optional<quint64> actedMs_;
};

} // namespace bullace::quick
