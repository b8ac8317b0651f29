// How one descriptor is answered: by one of a few keys, by a number, by the parts of a record one
// after the other, by words or a picture. It knows no screen.
#pragma once

#include "core/base/units.hpp"
#include "core/descriptors/number_pad.hpp"
#include "core/vineyard/catalogue.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bullace::field {

enum class Way {
    Keys,   // one key records
    Number, // digits, then Next
    Parts,  // of a record: each in one of the two ways above
    Words,
    Picture,
    Unknown, // a kind of a newer office
};

class EntryPad {
public:
    // `asked` must outlive this. `stages` are the round's choice of codes; empty: all.
    EntryPad(const vineyard::Asked& asked,
             const UnitWishes& wishes,
             const std::vector<std::int64_t>& stages);

    [[nodiscard]] Way way() const { return way_; }
    // Whether keys answer now, or digits: of a record, for the part at which one is.
    [[nodiscard]] bool takesKeys() const { return !keys_.empty(); }

    // The answers as core writes them ("65", "bronze", "520").
    [[nodiscard]] const std::vector<std::string>& keys() const { return keys_; }
    // The value that a key records. Nothing where the record has further parts, or there is no such
    // key.
    [[nodiscard]] std::optional<Bytes> choose(std::size_t key);

    [[nodiscard]] descriptors::NumberPad& pad() { return pad_; }
    [[nodiscard]] const descriptors::NumberPad& pad() const { return pad_; }
    // The value of what is typed; nothing where the record has further parts, or the number is not
    // complete.
    [[nodiscard]] std::optional<Bytes> next();

    // Of a record: the part at which one is, and those answered so far in order.
    [[nodiscard]] const descriptors::RecordPart* part() const;
    [[nodiscard]] std::size_t partIndex() const { return values_.size(); }
    [[nodiscard]] const std::vector<Bytes>& answered() const { return values_; }
    // A part that may be left out is; the value where it was the last.
    [[nodiscard]] std::optional<Bytes> leaveOut();
    // Back to the part before; false at the first.
    bool back();

    // As typed with its unit, where that is not the one in which it is stored.
    [[nodiscard]] std::optional<std::string> as() const { return as_; }

private:
    void begin();
    [[nodiscard]] std::optional<Bytes> take(Bytes value);

    const vineyard::Asked& asked_;
    Unit unit_;
    Way way_ = Way::Unknown;
    std::vector<std::string> keys_;
    std::vector<std::int64_t> stages_;
    descriptors::NumberPad pad_;
    std::vector<Bytes> values_; // of a record's parts; null where left out
    std::optional<std::string> as_;
};

} // namespace bullace::field
