#include "sync/protocol/photo_fetch.hpp"

namespace bullace::sync {

namespace {

constexpr std::size_t kListed = 64;

} // namespace

std::optional<LackedAsk> PhotoFetch::nextList() {
    if (isListing_ || isLastList_ || !lacked_.empty()) {
        return std::nullopt;
    }
    isListing_ = true;
    return LackedAsk{after_, kListed};
}

void PhotoFetch::onList(const Lacked& lacked) {
    isListing_ = false;
    lacked_.assign(lacked.photos.begin(), lacked.photos.end());
    if (lacked_.empty()) {
        isLastList_ = true;
    } else {
        after_ = lacked_.back().photo;
    }
}

std::optional<PieceWant> PhotoFetch::nextWant() {
    if (lacked_.empty() || asked_.size() + storing_.size() >= kPiecesAtOnce) {
        return std::nullopt;
    }
    asked_.push_back({lacked_.front().photo, lacked_.front().have});
    lacked_.pop_front();
    return asked_.back();
}

bool PhotoFetch::onPiece(const Piece& piece, bool& isToStore) {
    isToStore = false;
    if (asked_.empty() || asked_.front().photo != piece.photo) {
        return false;
    }
    const std::uint64_t offset = asked_.front().offset;
    asked_.pop_front();
    if (piece.total == 0) {
        return true; // not there either
    }
    isToStore = true;
    storing_.push_back({piece.photo, piece.offset + piece.bytes.size(), piece.total});
    return piece.offset == offset;
}

void PhotoFetch::onStored(const PieceStored& stored, Summary& summary) {
    const Storing piece = storing_.front();
    storing_.pop_front();
    if (stored.isDamaged) {
        ++summary.photosDamaged;
    } else if (piece.reached < piece.total) {
        lacked_.push_front({piece.photo, piece.reached});
    } else {
        ++summary.photosReceived;
    }
}

} // namespace bullace::sync
