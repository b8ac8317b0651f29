#include "plots/relay_device.hpp"

#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>

#include <algorithm>

namespace bullace::plots {

namespace {

constexpr int kDotsPerInch = 96;
constexpr double kMmPerInch = 25.4;

class RelayEngine : public QPaintEngine {
public:
    RelayEngine(QPainter& painter, RelayDevice::Words words)
        : QPaintEngine(AllFeatures),
          painter_(painter),
          words_(words) {}

    bool begin(QPaintDevice* /*device*/) override {
        painter_.save();
        before_ = painter_.transform();
        clip_ = {};
        isClipped_ = false;
        return true;
    }
    bool end() override {
        painter_.restore();
        return true;
    }
    void updateState(const QPaintEngineState& now) override {
        const DirtyFlags changed = now.state();
        if (changed.testFlag(DirtyTransform)) {
            painter_.setTransform(now.transform() * before_);
        }
        if (changed.testFlag(DirtyPen)) {
            painter_.setPen(now.pen());
        }
        if (changed.testFlag(DirtyBrush)) {
            painter_.setBrush(now.brush());
        }
        if (changed.testFlag(DirtyBrushOrigin)) {
            painter_.setBrushOrigin(now.brushOrigin());
        }
        if (changed.testFlag(DirtyHints)) {
            painter_.setRenderHints(painter_.renderHints(), false);
            painter_.setRenderHints(now.renderHints());
        }
        if (changed.testFlag(DirtyOpacity)) {
            painter_.setOpacity(now.opacity());
        }
        updateClip(now, changed);
    }
    void drawPath(const QPainterPath& path) override {
        const QPen pen = painter_.pen();
        const qreal reach = std::max(1.0, pen.widthF());
        const QRectF bounds = path.boundingRect().adjusted(-reach, -reach, reach, reach);
        if (!isClipped_ || isInside(painter_.transform().mapRect(bounds))) {
            painter_.drawPath(path);
        } else {
            drawCut(path, pen);
        }
    }
    void drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) override {
        QPainterPath path;
        path.addPolygon(QPolygonF(QList<QPointF>(points, points + count)));
        if (mode == PolylineMode) {
            const QBrush brush = painter_.brush();
            painter_.setBrush(Qt::NoBrush);
            drawPath(path);
            painter_.setBrush(brush);
            return;
        }
        path.closeSubpath();
        path.setFillRule(mode == WindingMode ? Qt::WindingFill : Qt::OddEvenFill);
        drawPath(path);
    }
    void drawPixmap(const QRectF& to, const QPixmap& picture, const QRectF& from) override {
        painter_.drawPixmap(to, picture, from);
    }
    // Qt's own engine draws outlines where an engine does not draw words itself.
    void drawTextItem(const QPointF& at, const QTextItem& item) override {
        if (words_ == RelayDevice::Words::AsOutlines) {
            QPaintEngine::drawTextItem(at, item);
            return;
        }
        painter_.setFont(item.font());
        painter_.drawText(at, item.text());
    }
    [[nodiscard]] Type type() const override { return User; }

private:
    [[nodiscard]] bool isInside(const QRectF& box) const {
        return isRectangle_ ? clip_.boundingRect().contains(box) : clip_.contains(box);
    }
    // The inside and the line of a shape are cut each by itself.
    void drawCut(const QPainterPath& path, const QPen& pen) {
        const QPainterPath inside = painter_.transform().inverted().map(clip_);
        const QBrush brush = painter_.brush();
        painter_.setPen(Qt::NoPen);
        if (brush.style() != Qt::NoBrush) {
            painter_.drawPath(path.intersected(inside));
        }
        if (pen.style() != Qt::NoPen) {
            painter_.setBrush(pen.brush());
            painter_.drawPath(QPainterPathStroker(pen).createStroke(path).intersected(inside));
        }
        painter_.setBrush(brush);
        painter_.setPen(pen);
    }
    void updateClip(const QPaintEngineState& now, DirtyFlags changed) {
        if (changed.testFlag(DirtyClipPath)) {
            cut(now.clipOperation(), now.clipPath());
        }
        if (changed.testFlag(DirtyClipRegion)) {
            QPainterPath region;
            region.addRegion(now.clipRegion());
            cut(now.clipOperation(), region);
        }
        if (changed.testFlag(DirtyClipEnabled)) {
            isClipped_ = now.isClipEnabled();
        }
    }
    void cut(Qt::ClipOperation operation, const QPainterPath& path) {
        const QPainterPath there = painter_.transform().map(path);
        const bool hasBefore = operation == Qt::IntersectClip && !clip_.isEmpty();
        isClipped_ = operation != Qt::NoClip;
        clip_ = hasBefore ? clip_.intersected(there) : there;
        QPainterPath box;
        box.addRect(clip_.boundingRect());
        isRectangle_ = box.subtracted(clip_).isEmpty();
    }

    QPainter& painter_;
    RelayDevice::Words words_;
    QTransform before_;
    QPainterPath clip_; // in the units of the painter's device
    bool isClipped_ = false;
    bool isRectangle_ = false;
};

} // namespace

RelayDevice::RelayDevice(QPainter& painter, QSize size, Words words)
    : engine_(std::make_unique<RelayEngine>(painter, words)),
      size_(size) {}

RelayDevice::~RelayDevice() = default;

QPaintEngine* RelayDevice::paintEngine() const {
    return engine_.get();
}

int RelayDevice::metric(PaintDeviceMetric which) const {
    switch (which) {
    case PdmWidth:
        return size_.width();
    case PdmHeight:
        return size_.height();
    case PdmWidthMM:
        return qRound(size_.width() * kMmPerInch / kDotsPerInch);
    case PdmHeightMM:
        return qRound(size_.height() * kMmPerInch / kDotsPerInch);
    case PdmNumColors:
        return 1 << 24;
    case PdmDepth:
        return 32;
    case PdmDpiX:
    case PdmDpiY:
    case PdmPhysicalDpiX:
    case PdmPhysicalDpiY:
        return kDotsPerInch;
    case PdmDevicePixelRatio:
        return 1;
    case PdmDevicePixelRatioScaled:
        return qRound(devicePixelRatioFScale());
    default:
        return QPaintDevice::metric(which);
    }
}

} // namespace bullace::plots
