// Text as lines of an import: what is read makes an entry whose export reads as the same entry.
#include "fuzz/target.hpp"

#include "core/journal/entry_line.hpp"
#include "store/json_reader.hpp"

#include <string>

using namespace bullace;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    static_cast<void>(store::readJson(text));
    const Result<store::EntryLine> line = store::readEntryLine(text);
    if (!line) {
        fuzz::promise(!line.error().message.empty(), "what is refused is refused with a reason");
        return 0;
    }
    const Bytes bytes = line->entry.encode();
    const Result<journal::EntryView> entry = journal::readEntry(bytes);
    if (!entry) {
        return 0; // beyond the bounds of an entry, and told so
    }
    std::string exported;
    journal::appendEntryLine(exported, *entry, journal::chainDigest({}, bytes));
    const Result<store::EntryLine> again = store::readEntryLine(exported);
    fuzz::promise(again.ok(), "an exported line can be imported");
    fuzz::promise(again->entry.encode() == bytes, "import after export is the same entry");
    return 0;
}
