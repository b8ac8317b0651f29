#include "desk/photo_reading.hpp"

#include "store/photos.hpp"

#include <QBuffer>
#include <QImageReader>

namespace bullace::desk {

namespace {

QImage pictureOf(const Bytes& bytes) {
    QBuffer buffer;
    buffer.setData(reinterpret_cast<const char*>(bytes.data()), static_cast<int>(bytes.size()));
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    const QSize size = reader.size();
    if (size.width() > kMostPhotoPx || size.height() > kMostPhotoPx) {
        reader.setScaledSize(size.scaled(kMostPhotoPx, kMostPhotoPx, Qt::KeepAspectRatio));
    }
    return reader.read();
}

} // namespace

Result<std::vector<QImage>> readPhotos(store::Database& database,
                                       const std::vector<std::string>& digests) {
    std::vector<QImage> pictures;
    for (const std::string& hex : digests) {
        const auto digest = Digest::fromBytes(fromHex(hex).value_or(Bytes{}));
        if (!digest) {
            continue;
        }
        auto photo =
            store::photoPart(database, *digest, 0, static_cast<std::size_t>(store::kGreatestPhoto));
        if (!photo) {
            return photo.error();
        }
        if (QImage picture = pictureOf(photo->bytes); photo->total > 0 && !picture.isNull()) {
            pictures.push_back(std::move(picture));
        }
    }
    return pictures;
}

} // namespace bullace::desk
