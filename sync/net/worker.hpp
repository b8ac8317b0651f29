// One thread on which jobs are done in their order: a server's database, and the desk's.
#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>

namespace bullace::sync::net {

// Does jobs one after the other in the order given. Who posts bounds how many wait.
class Worker {
public:
    Worker();
    // Does what still waits, then ends the thread.
    ~Worker();
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;

    void post(std::function<void()> job);

private:
    void run();

    std::mutex mutex_;
    std::condition_variable wake_;
    std::deque<std::function<void()>> jobs_;
    bool isEnding_ = false;
    std::thread thread_; // last: it uses the others
};

} // namespace bullace::sync::net
