// Bytes as entries: what is read is what would be written, and everything that looks at an entry
// copes with it.
#include "fuzz/target.hpp"

#include "core/journal/entry.hpp"
#include "core/journal/entry_line.hpp"
#include "core/journal/json_value.hpp"
#include "core/journal/standing.hpp"
#include "core/journal/subject.hpp"
#include "core/merge/rulebook.hpp"

#include <string>

using namespace bullace;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const Bytes bytes(reinterpret_cast<const char*>(data), size);
    const Result<journal::EntryView> entry = journal::readEntry(bytes);
    // Values are also looked at where they stand outside of entries, as the console's and the
    // rulebook's do.
    static_cast<void>(journal::valueToJson(bytes));
    static_cast<void>(journal::comparable(bytes));
    static_cast<void>(merge::readBookRule(bytes));
    if (!entry) {
        return 0;
    }
    fuzz::promise(entry->owned().encode() == bytes,
                  "an entry read and written again is the same bytes");
    fuzz::promise(journal::isSameValue(entry->value, entry->value),
                  "a value is the same as itself");
    fuzz::promise(!journal::valueToJson(entry->value).empty(), "a value has a text");
    static_cast<void>(journal::standing(*entry));
    static_cast<void>(journal::readSubject(entry->subject));
    std::string line;
    journal::appendEntryLine(line, *entry, journal::chainDigest({}, bytes));
    fuzz::promise(line.find('\n') == line.size() - 1, "an entry is one line");
    return 0;
}
