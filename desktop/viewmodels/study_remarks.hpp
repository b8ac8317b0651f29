// Collecting what several computations had to say about one study.
#pragma once

#include "core/base/remark.hpp"

#include <string>
#include <utility>
#include <vector>

namespace bullace::desk {

// Adds remarks that are not there yet.
void addRemarks(const Remarks& remarks, Remarks& to);

// Remarks that computations made of one accession each: told once for all that they concern.
class NamedRemarks {
public:
    void add(const std::string& accession, const Remarks& remarks);
    void tell(Remarks& to) const;

private:
    std::vector<std::pair<Remark, std::vector<std::string>>> all_;
};

} // namespace bullace::desk
