#include "demo/dice.hpp"

#include <bit>
#include <cmath>

namespace bullace::demo {

Dice::Dice(std::uint64_t seed) {
    for (std::uint64_t& word : state_) {
        seed += 0x9e3779b97f4a7c15U;
        std::uint64_t mixed = seed;
        mixed = (mixed ^ mixed >> 30U) * 0xbf58476d1ce4e5b9U;
        mixed = (mixed ^ mixed >> 27U) * 0x94d049bb133111ebU;
        word = mixed ^ mixed >> 31U;
    }
}

std::uint64_t Dice::next() {
    const std::uint64_t result = std::rotl(state_[1] * 5, 7) * 9;
    const std::uint64_t shifted = state_[1] << 17U;
    state_[2] ^= state_[0];
    state_[3] ^= state_[1];
    state_[1] ^= state_[2];
    state_[0] ^= state_[3];
    state_[2] ^= shifted;
    state_[3] = std::rotl(state_[3], 45);
    return result;
}

int Dice::between(int least, int greatest) {
    const auto span = static_cast<std::uint64_t>(greatest - least) + 1;
    return least + static_cast<int>(next() % span);
}

double Dice::uniform() {
    return static_cast<double>(next() >> 11U) / 9007199254740992.0; // 2^53
}

double Dice::normal(double mean, double deviation) {
    double sum = 0;
    for (int i = 0; i < 12; ++i) {
        sum += uniform();
    }
    return mean + deviation * (sum - 6.0);
}

double rounded(double value, int decimals) {
    double scale = 1;
    for (int i = 0; i < decimals; ++i) {
        scale *= 10;
    }
    return std::nearbyint(value * scale) / scale;
}

} // namespace bullace::demo
