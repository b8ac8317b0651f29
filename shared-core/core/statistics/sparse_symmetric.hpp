// A symmetric matrix of which most elements are zero, as plain columns: what the inverse of a
// relationship matrix is handed over as.
#pragma once

#include <cstdint>
#include <vector>

namespace bullace::statistics {

// The lower triangle with the diagonal, column by column; rows ascend within a column.
struct SparseSymmetric {
    std::uint32_t size = 0;
    std::vector<std::uint64_t> columnStart; // size + 1
    std::vector<std::uint32_t> row;
    std::vector<double> value;
};

} // namespace bullace::statistics
