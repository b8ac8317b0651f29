#include "quick/field_sign.hpp"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace bullace::quick {

namespace {

// Each sign in a square of side 1.
QPainterPath strokesOf(FieldSign::Sign sign) {
    QPainterPath path;
    if (sign == FieldSign::Open) {
        path.addEllipse(QRectF(0.1, 0.1, 0.8, 0.8));
    } else if (sign == FieldSign::Withdrawn || sign == FieldSign::Erase) {
        const qreal left = sign == FieldSign::Erase ? 0.45 : 0.12;
        const qreal inset = sign == FieldSign::Erase ? 0.36 : 0.12;
        const qreal right = sign == FieldSign::Erase ? 0.73 : 0.88;
        path.moveTo(left, inset);
        path.lineTo(right, 1 - inset);
        path.moveTo(left, 1 - inset);
        path.lineTo(right, inset);
    }
    if (sign == FieldSign::Erase) {
        path.addPolygon(QPolygonF(
            {{0.02, 0.5}, {0.28, 0.18}, {0.95, 0.18}, {0.95, 0.82}, {0.28, 0.82}, {0.02, 0.5}}));
    } else if (sign == FieldSign::Back) {
        path.moveTo(0.34, 0.08);
        path.lineTo(0.1, 0.34);
        path.lineTo(0.34, 0.6);
        path.moveTo(0.1, 0.34);
        path.lineTo(0.62, 0.34);
        path.cubicTo(1.02, 0.34, 1.02, 0.9, 0.62, 0.9);
        path.lineTo(0.36, 0.9);
    }
    return path;
}

QPainterPath fillsOf(FieldSign::Sign sign) {
    QPainterPath path;
    if (sign == FieldSign::Done) {
        path.addRect(QRectF(0.1, 0.1, 0.8, 0.8));
    } else if (sign == FieldSign::Marked) {
        path.addPolygon(QPolygonF({{0.5, 0.04}, {1, 0.94}, {0, 0.94}}));
    } else if (sign == FieldSign::Waiting) {
        path.addRect(QRectF(0.16, 0.1, 0.24, 0.8));
        path.addRect(QRectF(0.6, 0.1, 0.24, 0.8));
    }
    return path;
}

} // namespace

void paintSign(QPainter& painter, FieldSign::Sign sign, const QColor& ink, const QRectF& box) {
    const qreal side = std::min(box.width(), box.height());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(box.center() - QPointF(side / 2, side / 2));
    painter.scale(side, side);
    painter.fillPath(fillsOf(sign), ink);
    painter.strokePath(strokesOf(sign),
                       QPen(ink, 0.12, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.restore();
}

void FieldSign::setSign(Sign value) {
    if (value != sign_) {
        sign_ = value;
        update();
        emit changed();
    }
}

void FieldSign::setInk(const QColor& value) {
    if (value != ink_) {
        ink_ = value;
        update();
        emit changed();
    }
}

void FieldSign::paint(QPainter* painter) {
    paintSign(*painter, sign_, ink_, QRectF(0, 0, width(), height()));
}

} // namespace bullace::quick
