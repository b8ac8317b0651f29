// What is read when a file is opened, and again by a reader that goes on with it while another
// program writes it.
#include "store/chain.hpp"
#include "store/database.hpp"
#include "store/derived.hpp"
#include "store/sqlite.hpp"

namespace bullace::store {

Result<bool> Database::refresh() {
    if (!isReader_) {
        return false;
    }
    rest();
    const Result<std::int64_t> version = connection_->number("PRAGMA data_version");
    if (!version) {
        return version.error();
    }
    if (Status begun = connection_->run("BEGIN"); !begun) {
        return begun.error();
    }
    if (*version == seenVersion_) {
        return false;
    }
    seenVersion_ = *version;
    derived_.reset();
    chain_.reset();
    if (Status loaded = load(); !loaded) {
        return loaded.error();
    }
    return true;
}

void Database::rest() {
    if (isReader_ && connection_->inTransaction()) {
        // A transaction that only read has nothing that could fail to be kept.
        static_cast<void>(connection_->run("COMMIT"));
    }
}

Status Database::load() {
    if (Status read = readAbout(); !read) {
        return read;
    }
    // Merging into a big station touches many pages; a tablet's journal is written at one end.
    const char* cache = isReader_ ? "PRAGMA cache_size=-16384"
                        : about_.role == Role::Station
                            ? "PRAGMA cache_size=-65536; PRAGMA wal_autocheckpoint=8000"
                            : "PRAGMA cache_size=-8192; PRAGMA wal_autocheckpoint=1000";
    if (Status set = connection_->run(cache); !set) {
        return set;
    }
    Result<Chain> chain = Chain::load(*connection_);
    if (!chain) {
        return chain.error();
    }
    Result<Derived> derived = Derived::load(*connection_);
    if (!derived) {
        return derived.error();
    }
    const Result<std::int64_t> waiting = connection_->number("SELECT count(*) FROM waiting");
    if (!waiting) {
        return waiting.error();
    }
    touched_.clear();
    waitingCount_ = static_cast<std::uint64_t>(*waiting);
    chain_ = std::make_unique<Chain>(std::move(*chain));
    derived_ = std::make_unique<Derived>(std::move(*derived));
    return {};
}

} // namespace bullace::store
