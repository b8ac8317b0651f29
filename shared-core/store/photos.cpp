#include "store/photos.hpp"

#include "store/sqlite.hpp"

#include <algorithm>

namespace bullace::store {

namespace {

struct Held {
    std::uint64_t size = 0;
    std::uint64_t held = 0;
};

Result<Held> heldOf(Connection& connection, const Digest& photo) {
    Result<Statement> row = connection.prepare("SELECT size, held FROM photos WHERE digest = ?1");
    if (!row) {
        return row.error();
    }
    const Result<bool> found = row->bindBytes(1, photo.view()).step();
    if (!found) {
        return found.error();
    }
    return *found ? Held{static_cast<std::uint64_t>(row->integer(0)),
                         static_cast<std::uint64_t>(row->integer(1))}
                  : Held{};
}

// Calls `each` with the pieces in order, from the one that holds `offset` on, until it returns
// false.
template<typename Each>
Status eachPiece(Connection& connection, const Digest& photo, std::uint64_t offset, Each each) {
    Result<Statement> rows =
        connection.prepare("SELECT start, bytes FROM photo_pieces WHERE digest = ?1 AND start + "
                           "length(bytes) > ?2 ORDER BY start");
    if (!rows) {
        return rows.error();
    }
    rows->bindBytes(1, photo.view()).bind(2, static_cast<std::int64_t>(offset));
    while (true) {
        const Result<bool> row = rows->step();
        if (!row) {
            return row.error();
        }
        if (!*row || !each(static_cast<std::uint64_t>(rows->integer(0)), rows->bytes(1))) {
            return {};
        }
    }
}

Status forget(Connection& connection, const Digest& photo) {
    for (const char* sql :
         {"DELETE FROM photos WHERE digest = ?1", "DELETE FROM photo_pieces WHERE digest = ?1"}) {
        Result<Statement> remove = connection.prepare(sql);
        if (!remove) {
            return remove.error();
        }
        if (Status gone = remove->bindBytes(1, photo.view()).execute(); !gone) {
            return gone;
        }
    }
    return {};
}

Status putPiece(Connection& connection,
                const Digest& photo,
                std::uint64_t total,
                std::uint64_t offset,
                BytesView bytes) {
    Result<Statement> piece =
        connection.prepare("INSERT INTO photo_pieces(digest, start, bytes) VALUES(?1, ?2, ?3)");
    Result<Statement> photoRow =
        connection.prepare("INSERT INTO photos(digest, size, held) VALUES(?1, ?2, ?3) ON "
                           "CONFLICT(digest) DO UPDATE SET held = ?3");
    if (!piece || !photoRow) {
        return piece ? photoRow.error() : piece.error();
    }
    piece->bindBytes(1, photo.view())
        .bind(2, static_cast<std::int64_t>(offset))
        .bindBytes(3, bytes);
    if (Status put = piece->execute(); !put) {
        return put;
    }
    photoRow->bindBytes(1, photo.view()).bind(2, static_cast<std::int64_t>(total));
    return photoRow->bind(3, static_cast<std::int64_t>(offset + bytes.size())).execute();
}

} // namespace

Result<std::vector<LackingPhoto>>
lackingPhotos(Database& database, const Digest& after, std::size_t most) {
    Result<Statement> rows = database.connection().prepare(
        "SELECT n.digest, ifnull(p.held, 0) FROM named_photos n LEFT JOIN photos p ON p.digest = "
        "n.digest "
        "WHERE n.digest > ?1 AND (p.digest IS NULL OR p.held < p.size) ORDER BY n.digest LIMIT ?2");
    if (!rows) {
        return rows.error();
    }
    rows->bindBytes(1, after.view()).bind(2, static_cast<std::int64_t>(most));
    std::vector<LackingPhoto> lacking;
    while (true) {
        const Result<bool> row = rows->step();
        if (!row) {
            return row.error();
        }
        if (!*row) {
            return lacking;
        }
        if (const auto digest = Digest::fromBytes(rows->bytes(0))) {
            lacking.push_back({*digest, static_cast<std::uint64_t>(rows->integer(1))});
        }
    }
}

Result<PhotoPart>
photoPart(Database& database, const Digest& photo, std::uint64_t offset, std::size_t most) {
    const Result<Held> held = heldOf(database.connection(), photo);
    if (!held) {
        return held.error();
    }
    PhotoPart part;
    if (held->size == 0 || held->held < held->size) {
        return part;
    }
    part.total = held->size;
    Status read =
        eachPiece(database.connection(), photo, offset, [&](std::uint64_t start, BytesView bytes) {
            const std::uint64_t skip = offset > start ? offset - start : 0;
            part.bytes.append(
                bytes.substr(static_cast<std::size_t>(skip), most - part.bytes.size()));
            return part.bytes.size() < most;
        });
    if (!read) {
        return read.error();
    }
    return part;
}

Status addPhotoPiece(Database& database,
                     const Digest& photo,
                     std::uint64_t total,
                     std::uint64_t offset,
                     BytesView bytes) {
    Connection& connection = database.connection();
    Result<Transaction> transaction = Transaction::begin(connection);
    if (!transaction) {
        return transaction.error();
    }
    const Result<Held> held = heldOf(connection, photo);
    if (!held) {
        return held.error();
    }
    const bool isNext = held->held == offset && (held->size == 0 || held->size == total) &&
                        !bytes.empty() && total <= kGreatestPhoto &&
                        bytes.size() <= total - std::min(offset, total);
    if (!isNext) {
        return Error{ErrorCode::InvalidInput,
                     "A piece of a photo came out of order. It will be asked for again.",
                     {}};
    }
    if (Status put = putPiece(connection, photo, total, offset, bytes); !put) {
        return put;
    }
    bool isRight = true;
    if (offset + bytes.size() == total) {
        Bytes whole;
        Status read = eachPiece(connection, photo, 0, [&whole](std::uint64_t, BytesView piece) {
            whole.append(piece);
            return true;
        });
        if (!read) {
            return read;
        }
        isRight = sha256(whole) == photo;
        if (Status gone = isRight ? Status{} : forget(connection, photo); !gone) {
            return gone;
        }
    }
    if (Status done = transaction->commit(); !done) {
        return done;
    }
    if (!isRight) {
        return Error{ErrorCode::Damaged,
                     "A photo came damaged. It will be asked for again from its beginning.",
                     photo.hex()};
    }
    return {};
}

} // namespace bullace::store
