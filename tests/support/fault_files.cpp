#include "support/fault_files.hpp"

#include <algorithm>

namespace bullace::test {

namespace {

constexpr std::uint64_t kSector = 512;

void apply(const PendingWrite& write, FileImage& image) {
    if (write.isTruncation) {
        image.resize(write.offset);
    } else {
        image.write(write.offset, write.bytes);
    }
}

// A write that ends at one of the sector boundaries within it, or before it began.
void applyTorn(const PendingWrite& write, FileImage& image, FaultDice& dice) {
    if (write.isTruncation) {
        return;
    }
    const std::uint64_t first = write.offset / kSector + 1;
    const std::uint64_t last = (write.offset + write.bytes.size()) / kSector;
    if (last < first) {
        return;
    }
    const std::uint64_t end = (first + dice.below(last - first + 1)) * kSector;
    image.write(
        write.offset,
        std::string_view(write.bytes).substr(0, static_cast<std::size_t>(end - write.offset)));
}

} // namespace

std::uint64_t FaultDice::next() {
    state_ += 0x9e3779b97f4a7c15U;
    std::uint64_t mixed = state_;
    mixed = (mixed ^ mixed >> 30U) * 0xbf58476d1ce4e5b9U;
    mixed = (mixed ^ mixed >> 27U) * 0x94d049bb133111ebU;
    return mixed ^ mixed >> 31U;
}

FileImage::Page& FileImage::own(std::size_t index) {
    std::shared_ptr<Page>& page = pages_[index];
    if (!page) {
        page = std::make_shared<Page>();
        page->fill(0);
    } else if (page.use_count() > 1) {
        page = std::make_shared<Page>(*page);
    }
    return *page;
}

std::size_t FileImage::read(std::uint64_t offset, char* into, std::size_t length) const {
    if (offset >= size_) {
        return 0;
    }
    const std::size_t there = std::min(length, static_cast<std::size_t>(size_ - offset));
    for (std::size_t done = 0; done < there;) {
        const auto at = static_cast<std::size_t>(offset + done);
        const std::size_t within = at % kPage;
        const std::size_t part = std::min(kPage - within, there - done);
        const std::shared_ptr<Page>& page = pages_[at / kPage];
        if (page) {
            std::copy_n(page->data() + within, part, into + done);
        } else {
            std::fill_n(into + done, part, '\0');
        }
        done += part;
    }
    return there;
}

void FileImage::write(std::uint64_t offset, std::string_view bytes) {
    if (offset + bytes.size() > size_) {
        resize(offset + bytes.size());
    }
    for (std::size_t done = 0; done < bytes.size();) {
        const auto at = static_cast<std::size_t>(offset + done);
        const std::size_t within = at % kPage;
        const std::size_t part = std::min(kPage - within, bytes.size() - done);
        std::copy_n(bytes.data() + done, part, own(at / kPage).data() + within);
        done += part;
    }
}

void FileImage::resize(std::uint64_t size) {
    pages_.resize(static_cast<std::size_t>((size + kPage - 1) / kPage));
    const auto within = static_cast<std::size_t>(size % kPage);
    if (size < size_ && within != 0 && pages_.back()) {
        Page& last = own(pages_.size() - 1);
        std::fill(last.begin() + static_cast<std::ptrdiff_t>(within), last.end(), '\0');
    }
    size_ = size;
}

std::string FileImage::bytes() const {
    std::string all(static_cast<std::size_t>(size_), '\0');
    read(0, all.data(), all.size());
    return all;
}

void StoredFile::write(std::uint64_t offset, std::string_view bytes) {
    live.write(offset, bytes);
    pending.push_back({offset, std::string(bytes), false});
}

void StoredFile::truncate(std::uint64_t size) {
    live.resize(size);
    pending.push_back({size, {}, true});
}

void StoredFile::sync() {
    for (const PendingWrite& write : pending) {
        apply(write, durable);
    }
    pending.clear();
}

void StoredFile::recover(WriteModel model, FaultDice& dice) {
    const std::size_t whole = model == WriteModel::Torn      ? dice.below(pending.size() + 1)
                              : model == WriteModel::AllLost ? 0
                                                             : pending.size();
    for (std::size_t i = 0; i < whole; ++i) {
        if (model != WriteModel::Reordered || dice.below(2) == 0) {
            apply(pending[i], durable);
        }
    }
    if (model == WriteModel::Torn && whole < pending.size()) {
        applyTorn(pending[whole], durable, dice);
    }
    if (model == WriteModel::AllKept) {
        durable = live; // also what a failed sync had dropped on the way to the disk
    }
    live = durable;
    pending.clear();
    shared.clear();
    isNamed = true;
}

} // namespace bullace::test
