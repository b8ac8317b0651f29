// How long the thread of the screen takes nothing new: the times between two turns of its loop.
#pragma once

#include <QElapsedTimer>
#include <QTimer>

#include <ctime>
#include <vector>

namespace bullace::desk_bench {

// Asks for a turn every millisecond; from its making until it is gone.
class LoopProbe {
public:
    LoopProbe() {
        gaps_.reserve(std::size_t{1} << 18);
        work_.reserve(std::size_t{1} << 18);
        timer_.setTimerType(Qt::PreciseTimer);
        timer_.setInterval(1);
        QObject::connect(&timer_, &QTimer::timeout, [this] { turn(); });
        since_.start();
        worked_ = processorMs();
        timer_.start();
    }
    // Milliseconds from each turn to the next.
    [[nodiscard]] const std::vector<double>& gaps() const { return gaps_; }
    // Of each, what the thread itself computed: the rest it waited, for the processor where other
    // programs have it, or for anything else.
    [[nodiscard]] const std::vector<double>& work() const { return work_; }

private:
    static double processorMs() {
        timespec now{};
        clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
        return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
    }
    void turn() {
        const double worked = processorMs();
        gaps_.push_back(static_cast<double>(since_.nsecsElapsed()) / 1e6);
        work_.push_back(worked - worked_);
        since_.start();
        worked_ = worked;
    }

    QTimer timer_;
    QElapsedTimer since_;
    double worked_ = 0;
    std::vector<double> gaps_;
    std::vector<double> work_;
};

} // namespace bullace::desk_bench
