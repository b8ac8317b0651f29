#include "store/line_source.hpp"

#include <algorithm>
#include <cstring>

namespace bullace::store {

bool LineSource::fill() {
    in_.read(buffer_.data(), static_cast<std::streamsize>(buffer_.size()));
    at_ = 0;
    end_ = static_cast<std::size_t>(in_.gcount());
    bytesRead_ += end_;
    return end_ > 0;
}

bool LineSource::next(std::string_view& line) {
    line_.clear();
    isCut_ = false;
    if (at_ == end_ && !fill()) {
        return false;
    }
    while (true) {
        const char* start = buffer_.data() + at_;
        const std::size_t left = end_ - at_;
        const void* feed = std::memchr(start, '\n', left);
        const std::size_t length =
            feed == nullptr ? left
                            : static_cast<std::size_t>(static_cast<const char*>(feed) - start);
        const std::size_t room = mostBytes_ - std::min(mostBytes_, line_.size());
        line_.append(start, std::min(length, room));
        isCut_ = isCut_ || length > room;
        at_ += length + (feed == nullptr ? 0 : 1);
        if (feed != nullptr || !fill()) {
            break;
        }
    }
    if (!line_.empty() && line_.back() == '\r') {
        line_.pop_back();
    }
    ++number_;
    line = line_;
    return true;
}

} // namespace bullace::store
