// The cross-products of a mixed model's columns, of one descriptor or of several at the same plots.
#include "core/trials/mixed_equations_matrix.hpp"

#include <map>

namespace bullace::trials {

namespace {

Sparse lowerOf(const Sparse& matrix) {
    return matrix.triangularView<Eigen::Lower>();
}

// Columns of the matrix, in the order given.
Sparse columnsOf(const Sparse& matrix, const std::vector<int>& columns) {
    Sparse some(matrix.rows(), static_cast<Eigen::Index>(columns.size()));
    for (std::size_t i = 0; i < columns.size(); ++i) {
        some.startVec(static_cast<Eigen::Index>(i));
        for (Sparse::InnerIterator it(matrix, columns[i]); it; ++it) {
            some.insertBackByOuterInner(static_cast<Eigen::Index>(i), it.row()) = it.value();
        }
    }
    some.finalize();
    return some;
}

Eigen::VectorXd valuesAt(const Eigen::VectorXd& values, const std::vector<int>& places) {
    Eigen::VectorXd some(static_cast<Eigen::Index>(places.size()));
    for (std::size_t i = 0; i < places.size(); ++i) {
        some[static_cast<Eigen::Index>(i)] = values[places[i]];
    }
    return some;
}

} // namespace

std::vector<Sparse> MixedEquations::products() {
    std::vector<Sparse> products;
    const auto rows = static_cast<int>(design_.response.size());
    if (isSingle_) {
        patterns_ = {{{0}, static_cast<double>(rows)}};
        Part& part = parts_.emplace_back();
        part.right = design_.transposed * design_.response;
        part.square = design_.response.squaredNorm();
        products.push_back(lowerOf(design_.transposed * Sparse(design_.transposed.transpose())));
        return products;
    }
    std::map<std::uint32_t, std::vector<int>> plots; // rows of each, by their descriptor
    for (int row = 0; row < rows; ++row) {
        auto& plot = plots[design_.plotOf[static_cast<std::size_t>(row)]];
        plot.resize(static_cast<std::size_t>(design_.descriptors), -1);
        plot[design_.descriptorOf[static_cast<std::size_t>(row)]] = row;
    }
    std::map<std::vector<int>, std::vector<std::vector<int>>> byPattern;
    for (const auto& [number, plot] : plots) {
        std::vector<int> descriptors;
        for (int descriptor = 0; descriptor < design_.descriptors; ++descriptor) {
            if (plot[static_cast<std::size_t>(descriptor)] >= 0) {
                descriptors.push_back(descriptor);
            }
        }
        auto& lists = byPattern[descriptors];
        lists.resize(descriptors.size());
        for (std::size_t i = 0; i < descriptors.size(); ++i) {
            lists[i].push_back(plot[static_cast<std::size_t>(descriptors[i])]);
        }
    }
    for (const auto& [descriptors, lists] : byPattern) {
        addPattern(descriptors, lists, products);
    }
    return products;
}

void MixedEquations::addPattern(std::vector<int> descriptors,
                                const std::vector<std::vector<int>>& rows,
                                std::vector<Sparse>& products) {
    for (std::size_t one = 0; one < rows.size(); ++one) {
        const Sparse left = columnsOf(design_.transposed, rows[one]);
        const Eigen::VectorXd leftValues = valuesAt(design_.response, rows[one]);
        for (std::size_t other = 0; other <= one; ++other) {
            const Sparse right = columnsOf(design_.transposed, rows[other]);
            const Eigen::VectorXd rightValues = valuesAt(design_.response, rows[other]);
            Sparse product = left * Sparse(right.transpose());
            Part& part = parts_.emplace_back();
            part.pattern = patterns_.size();
            part.one = static_cast<int>(one);
            part.other = static_cast<int>(other);
            part.right = left * rightValues;
            part.square = leftValues.dot(rightValues);
            if (one != other) {
                product = Sparse(product + Sparse(product.transpose()));
                part.right += right * leftValues;
                part.square *= 2;
            }
            products.push_back(lowerOf(product));
        }
    }
    patterns_.push_back({std::move(descriptors), static_cast<double>(rows.front().size())});
}

} // namespace bullace::trials
