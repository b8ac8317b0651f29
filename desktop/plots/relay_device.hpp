// A device that hands on to another painter what is drawn on it: for what draws with a painter of
// its own kind, and for files that carry no typeface or know no clipping.
#pragma once

#include <QPaintDevice>
#include <QPaintEngine>

#include <memory>

namespace bullace::plots {

class RelayDevice : public QPaintDevice {
public:
    enum class Words { AsWords, AsOutlines };

    // Draws with `painter`, which must be active and outlive the device, into `size` of its units.
    // While something is drawn on the device nobody else draws with the painter. Shapes are cut
    // where the clipping ends, so that the painter needs none.
    RelayDevice(QPainter& painter, QSize size, Words words);
    ~RelayDevice() override;
    [[nodiscard]] QPaintEngine* paintEngine() const override;

protected:
    [[nodiscard]] int metric(PaintDeviceMetric which) const override;

private:
    std::unique_ptr<QPaintEngine> engine_;
    QSize size_;
};

} // namespace bullace::plots
