// How long the thread of the screen takes nothing new: the times between two turns of its loop.
#pragma once

#include <QElapsedTimer>
#include <QTimer>

#include <vector>

namespace bullace::desk_bench {

// Asks for a turn every millisecond; from its making until it is gone.
class LoopProbe {
public:
    LoopProbe() {
        gaps_.reserve(std::size_t{1} << 18);
        timer_.setTimerType(Qt::PreciseTimer);
        timer_.setInterval(1);
        QObject::connect(&timer_, &QTimer::timeout, [this] { turn(); });
        since_.start();
        timer_.start();
    }
    // Milliseconds from each turn to the next.
    [[nodiscard]] const std::vector<double>& gaps() const { return gaps_; }

private:
    void turn() {
        gaps_.push_back(static_cast<double>(since_.nsecsElapsed()) / 1e6);
        since_.start();
    }

    QTimer timer_;
    QElapsedTimer since_;
    std::vector<double> gaps_;
};

} // namespace bullace::desk_bench
