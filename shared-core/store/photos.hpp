// Photos by their SHA-256: which are lacking, and their bytes in pieces.
#pragma once

#include "core/base/digest.hpp"
#include "core/base/result.hpp"
#include "store/database.hpp"

#include <cstdint>
#include <vector>

namespace bullace::store {

inline constexpr std::uint64_t kGreatestPhoto = std::uint64_t{64} * 1024 * 1024; // bytes

struct LackingPhoto {
    Digest digest;
    std::uint64_t held = 0; // bytes from its beginning that are here
};

// Photos that entries name and that are not whole here, ascending by digest, behind `after`; at
// most `most`.
[[nodiscard]] Result<std::vector<LackingPhoto>>
lackingPhotos(Database& database, const Digest& after, std::size_t most);

struct PhotoPart {
    std::uint64_t total = 0; // 0 where the photo is not whole here
    Bytes bytes;
};
[[nodiscard]] Result<PhotoPart>
photoPart(Database& database, const Digest& photo, std::uint64_t offset, std::size_t most);

// Puts a piece at the end of what is held of the photo, which must be `offset` bytes. The last
// piece checks the whole. Errors: InvalidInput (not the next piece, or beyond kGreatestPhoto),
// Damaged (the whole is another picture: what was held of it is gone).
[[nodiscard]] Status addPhotoPiece(Database& database,
                                   const Digest& photo,
                                   std::uint64_t total,
                                   std::uint64_t offset,
                                   BytesView bytes);

} // namespace bullace::store
