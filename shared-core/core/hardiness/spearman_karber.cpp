#include "core/hardiness/spearman_karber.hpp"

#include <algorithm>

namespace bullace::hardiness {

namespace {

struct Block {
    std::size_t rows = 0;
    double counted = 0;
    double killed = 0; // a number, not a share
    [[nodiscard]] double share() const { return killed / counted; }
};

// The integral of the dose over the shares from `trim` to 1 - `trim`, and its slope in each share.
class TrimmedArea {
public:
    TrimmedArea(std::span<const KillShare> shares, std::size_t first, std::size_t last, double trim)
        : shares_(shares),
          first_(first),
          last_(last),
          trim_(trim),
          slopes_(shares.size(), 0.0) {
        if (last_ == first_ + 1) {
            oneStep();
            return;
        }
        lowerEnd();
        for (std::size_t i = first_ + 1; i + 1 < last_; ++i) {
            middleStep(i);
        }
        upperEnd();
    }

    [[nodiscard]] double area() const { return area_; }
    [[nodiscard]] double slopeOf(std::size_t row) const { return slopes_[row]; }
    // What the authors' program has for it.
    [[nodiscard]] double printedSlopeOf(std::size_t row) const {
        if (last_ != first_ + 2 || row != first_ + 1) {
            return slopes_[row];
        }
        const KillShare& low = shares_[first_];
        const KillShare& middle = shares_[row];
        const double cut = (trim_ - low.killed) / (middle.killed - low.killed);
        return slopes_[row] - (middle.x - low.x) * cut * cut;
    }

private:
    // Both ends lie between the same two rows.
    void oneStep() {
        const KillShare& low = shares_[first_];
        const KillShare& high = shares_[last_];
        const double rise = high.killed - low.killed;
        const double width = high.x - low.x;
        const double kept = 1 - 2 * trim_;
        const double part = (0.5 - low.killed) / rise;
        area_ = kept * (low.x + part * width);
        slopes_[first_] = kept * width / rise * (part - 1);
        slopes_[last_] = -kept * width / rise * part;
    }

    void lowerEnd() {
        const KillShare& low = shares_[first_];
        const KillShare& high = shares_[first_ + 1];
        const double width = high.x - low.x;
        const double part = (high.killed - trim_) / (high.killed - low.killed); // that is kept
        area_ += (high.killed - trim_) * (high.x - width * part / 2);
        slopes_[first_] -= width * part * part / 2;
        slopes_[first_ + 1] += high.x - width * part + width * part * part / 2;
    }

    void middleStep(std::size_t from) {
        const KillShare& low = shares_[from];
        const KillShare& high = shares_[from + 1];
        const double middle = (low.x + high.x) / 2;
        area_ += (high.killed - low.killed) * middle;
        slopes_[from] -= middle;
        slopes_[from + 1] += middle;
    }

    void upperEnd() {
        const KillShare& low = shares_[last_ - 1];
        const KillShare& high = shares_[last_];
        const double width = high.x - low.x;
        const double part = (1 - trim_ - low.killed) / (high.killed - low.killed);
        area_ += (1 - trim_ - low.killed) * (low.x + width * part / 2);
        slopes_[last_ - 1] -= low.x + width * part - width * part * part / 2;
        slopes_[last_] -= width * part * part / 2;
    }

    std::span<const KillShare> shares_;
    std::size_t first_;
    std::size_t last_;
    double trim_;
    std::vector<double> slopes_;
    double area_ = 0;
};

void addVariance(SpearmanKarber& result, std::span<const KillShare> rising, const TrimmedArea& of) {
    const double kept = 1 - 2 * result.trim;
    result.varianceByLess = 0;
    for (std::size_t i = 0; i < rising.size(); ++i) {
        const double binomial = rising[i].killed * (1 - rising[i].killed);
        const double slope = of.slopeOf(i) / kept;
        const double printed = of.printedSlopeOf(i) / kept;
        const double spread = slope * slope * binomial;
        result.varianceAsPrinted += printed * printed * binomial / rising[i].counted;
        if (!(spread > 0)) {
            continue;
        }
        result.variance += spread / rising[i].counted;
        if (!(rising[i].counted > 1)) {
            result.varianceByLess.reset();
        } else if (result.varianceByLess) {
            *result.varianceByLess += spread / (rising[i].counted - 1);
        }
    }
}

} // namespace

std::vector<KillShare> risingShares(std::vector<KillShare> shares) {
    std::vector<Block> blocks;
    for (const KillShare& share : shares) {
        blocks.push_back({1, share.counted, share.killed * share.counted});
        while (blocks.size() > 1 && blocks[blocks.size() - 2].share() >= blocks.back().share()) {
            const Block last = blocks.back();
            blocks.pop_back();
            blocks.back().rows += last.rows;
            blocks.back().counted += last.counted;
            blocks.back().killed += last.killed;
        }
    }
    std::size_t row = 0;
    for (const Block& block : blocks) {
        for (std::size_t i = 0; i < block.rows; ++i, ++row) {
            if (block.rows > 1) { // one row alone keeps every digit of its share
                shares[row].killed = std::clamp(block.share(), 0.0, 1.0);
            }
        }
    }
    return shares;
}

std::vector<KillShare> killShares(std::span<const DoseRow> pooled) {
    std::vector<KillShare> shares;
    for (const DoseRow& row : pooled) {
        const auto counted = static_cast<double>(row.counted);
        shares.push_back({row.x, counted, static_cast<double>(row.dead) / counted});
    }
    return risingShares(std::move(shares));
}

Result<std::vector<KillShare>> killSharesAgainst(std::span<const DoseRow> pooled,
                                                 const Control& control) {
    if (control.counted <= 0 || control.dead < 0 || control.dead > control.counted) {
        return Error{ErrorCode::InvalidInput,
                     "The control has more dead than counted, or nothing counted.",
                     {}};
    }
    if (control.dead == control.counted) {
        return Error{ErrorCode::InvalidInput,
                     "All of the control died: what the frost killed cannot be told from it.",
                     {}};
    }
    const auto counted = static_cast<double>(control.counted);
    std::vector<KillShare> shares{{pooled.empty() ? 0 : pooled.front().x - 1,
                                   counted,
                                   static_cast<double>(control.dead) / counted}};
    for (const DoseRow& row : pooled) {
        const auto n = static_cast<double>(row.counted);
        shares.push_back({row.x, n, static_cast<double>(row.dead) / n});
    }
    shares = risingShares(std::move(shares));
    const double natural = shares.front().killed;
    if (natural >= 1) {
        return Error{ErrorCode::InvalidInput,
                     "The control died as much as the treated ones: there is no kill to tell.",
                     {}};
    }
    shares.erase(shares.begin());
    for (KillShare& share : shares) {
        share.killed = std::clamp((share.killed - natural) / (1 - natural), 0.0, 1.0);
    }
    return shares;
}

std::optional<SpearmanKarber> spearmanKarber(std::span<const KillShare> rising, double trim) {
    if (!(trim >= 0) || !(trim < 0.5) || rising.empty() || rising.front().killed > trim ||
        rising.back().killed < 1 - trim) {
        return std::nullopt;
    }
    std::size_t first = 0;
    while (first + 1 < rising.size() && rising[first + 1].killed <= trim) {
        ++first;
    }
    std::size_t last = rising.size() - 1;
    while (last > 0 && rising[last - 1].killed >= 1 - trim) {
        --last;
    }
    const TrimmedArea area(rising, first, last, trim);
    SpearmanKarber result{area.area() / (1 - 2 * trim), 0, {}, 0, trim};
    addVariance(result, rising, area);
    return result;
}

std::optional<double> leastTrim(std::span<const KillShare> rising) {
    if (rising.empty()) {
        return std::nullopt;
    }
    const double trim = std::max({0.0, rising.front().killed, 1 - rising.back().killed});
    return trim < 0.5 ? std::optional(trim) : std::nullopt;
}

} // namespace bullace::hardiness
