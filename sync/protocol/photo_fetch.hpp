// The fetching of photos behind the entries: which are lacking, and which pieces are on their way.
#pragma once

#include "sync/protocol/asks.hpp"
#include "sync/protocol/limits.hpp"
#include "sync/protocol/summary.hpp"

#include <deque>
#include <optional>

namespace bullace::sync {

class PhotoFetch {
public:
    // The next list to be asked of our database, where one is needed and none is on its way.
    [[nodiscard]] std::optional<LackedAsk> nextList();
    void onList(const Lacked& lacked);

    // The next piece to be asked of the other side, where there is room for one more.
    [[nodiscard]] std::optional<PieceWant> nextWant();
    // False where that piece was not asked for. `isToStore`: it holds bytes, and goes to the
    // database.
    [[nodiscard]] bool onPiece(const Piece& piece, bool& isToStore);
    void onStored(const PieceStored& stored, Summary& summary);

    [[nodiscard]] bool isOver() const {
        return isLastList_ && lacked_.empty() && asked_.empty() && storing_.empty();
    }

private:
    struct Storing {
        Digest photo;
        std::uint64_t reached = 0; // bytes of it, once stored
        std::uint64_t total = 0;
    };
    std::deque<LackedPhoto> lacked_; // not asked for yet
    std::deque<PieceWant> asked_;
    std::deque<Storing> storing_;
    Digest after_;
    bool isListing_ = false;
    bool isLastList_ = false;
};

} // namespace bullace::sync
