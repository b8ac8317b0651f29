// A promise of the program that a simulated vineyard has seen broken.
#pragma once

#include <stdexcept>
#include <string>

namespace bullace::test {

// Thrown by the checks; the seed has failed.
class Violation : public std::runtime_error {
public:
    Violation(std::string invariant, const std::string& what)
        : std::runtime_error(what),
          invariant_(std::move(invariant)) {}
    [[nodiscard]] const std::string& invariant() const { return invariant_; }

private:
    std::string invariant_; // in a few words, for the table of planted bugs
};

inline void demand(bool holds, const char* invariant, const std::string& what) {
    if (!holds) {
        throw Violation(invariant, what);
    }
}

} // namespace bullace::test
