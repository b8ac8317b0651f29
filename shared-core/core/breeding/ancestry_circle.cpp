// Tarjan's search with its own stack of calls.
#include "core/breeding/ancestry_circle.hpp"

#include <algorithm>

namespace bullace::breeding {

namespace {

class Search {
public:
    Search(std::span<const std::int32_t> mother, std::span<const std::int32_t> father)
        : mother_(mother),
          father_(father),
          met_(mother.size(), 0),
          low_(mother.size(), 0),
          isOpen_(mother.size(), 0),
          next_(mother.size(), 0) {}

    std::vector<std::vector<std::int32_t>> all() {
        for (std::size_t i = 0; i < mother_.size(); ++i) {
            if (met_[i] == 0) {
                from(static_cast<std::int32_t>(i));
            }
        }
        std::ranges::sort(circles_);
        return std::move(circles_);
    }

private:
    static std::size_t at(std::int32_t i) { return static_cast<std::size_t>(i); }

    void enter(std::int32_t i) {
        met_[at(i)] = low_[at(i)] = ++clock_;
        isOpen_[at(i)] = 1;
        open_.push_back(i);
        calls_.push_back(i);
    }

    void from(std::int32_t root) {
        enter(root);
        while (!calls_.empty()) {
            const std::int32_t i = calls_.back();
            if (next_[at(i)] < 2) {
                const std::int32_t parent = next_[at(i)]++ == 0 ? mother_[at(i)] : father_[at(i)];
                look(i, parent);
                continue;
            }
            calls_.pop_back();
            if (!calls_.empty()) {
                const std::int32_t child = calls_.back();
                low_[at(child)] = std::min(low_[at(child)], low_[at(i)]);
            }
            if (low_[at(i)] == met_[at(i)]) {
                close(i);
            }
        }
    }

    void look(std::int32_t i, std::int32_t parent) {
        if (parent < 0) {
            return;
        }
        if (met_[at(parent)] == 0) {
            enter(parent);
        } else if (isOpen_[at(parent)] != 0) {
            low_[at(i)] = std::min(low_[at(i)], met_[at(parent)]);
        }
    }

    void close(std::int32_t root) {
        std::vector<std::int32_t> members;
        do {
            members.push_back(open_.back());
            isOpen_[at(open_.back())] = 0;
            open_.pop_back();
        } while (members.back() != root);
        const bool isItsOwnParent = mother_[at(root)] == root || father_[at(root)] == root;
        if (members.size() > 1 || isItsOwnParent) {
            std::ranges::sort(members);
            circles_.push_back(std::move(members));
        }
    }

    std::span<const std::int32_t> mother_;
    std::span<const std::int32_t> father_;
    std::vector<std::uint32_t> met_; // when it was met, from 1
    std::vector<std::uint32_t> low_;
    std::vector<char> isOpen_;
    std::vector<char> next_; // which parent is looked at next
    std::vector<std::int32_t> open_;
    std::vector<std::int32_t> calls_;
    std::uint32_t clock_ = 0;
    std::vector<std::vector<std::int32_t>> circles_;
};

} // namespace

std::vector<std::vector<std::int32_t>> ancestryCircles(std::span<const std::int32_t> mother,
                                                       std::span<const std::int32_t> father) {
    return Search(mother, father).all();
}

} // namespace bullace::breeding
