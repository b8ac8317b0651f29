// The station's collection as its settled subjects tell, as of one moment: blocks and what stands
// in them, accessions, rounds, people, descriptors, crosses, lots, labels. Read anew when they
// change.
#pragma once

#include "core/base/bytes.hpp"
#include "core/descriptors/catalog.hpp"
#include "core/journal/subject.hpp"
#include "core/vineyard/block.hpp"
#include "core/vineyard/plantings.hpp"
#include "core/walk/round.hpp"

#include <deque>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bullace::vineyard {

struct Person {
    std::string code;
    std::string name;
    std::string number; // the office's code for somebody who was entered in the field
};

struct Accession {
    std::string id;
    std::string number; // the office's own, of one that was opened in the field
    std::string name;
    std::string status;
    std::optional<int> flowerSex; // OIV 151: 1 and 2 male, 3 perfect, 4 female
};

struct Lot {
    std::string id;
    std::string kind; // berries, juice, buds, pollen, seed
    std::string from; // position or accession
    std::string label;
    std::string number; // the office's own, of one that was opened in the field
};

struct Cross {
    std::string id;
    std::string number;   // the office's own; empty while it was only opened in the field
    std::string mother;   // accession
    std::string father;   // accession
    std::string motherAt; // position
    std::string pollenLot;
    bool isClosed = false;
};

// A descriptor that can be asked. The texts that `known` points to live in the catalogue.
struct Asked {
    descriptors::Descriptor known;
    std::string unknownKind; // a kind of a newer office: kept and shown, but not for entry here
};

// A number by which values of a descriptor can be compared; nothing where there is none.
[[nodiscard]] std::optional<double> comparableNumber(const Asked& asked, BytesView value);
// Stages lie as far apart as their steps, not as their codes; other numbers as they are.
[[nodiscard]] double onItsScale(const descriptors::Descriptor& known, double number);

class Catalogue {
public:
    class Reader;
    Catalogue() = default;
    Catalogue(const Catalogue&) = delete; // descriptors point into its texts
    Catalogue& operator=(const Catalogue&) = delete;

    [[nodiscard]] const std::vector<vineyard::Block>& blocks() const { return blocks_; }
    [[nodiscard]] const vineyard::Block* block(std::string_view code) const;
    [[nodiscard]] const vineyard::Plantings& plantings() const { return plantings_; }
    // Vines planted between two, like B2-07-14a, in the row.
    [[nodiscard]] std::vector<std::string> between(std::string_view block, unsigned row) const;
    // All places of a row in planting order, those between two among them.
    [[nodiscard]] std::vector<std::string> placesOf(std::string_view block, const Row& row) const;
    [[nodiscard]] const std::vector<walk::Round>& rounds() const { return rounds_; }
    [[nodiscard]] const walk::Round* round(std::string_view id) const;
    [[nodiscard]] const std::vector<Person>& people() const { return people_; }
    [[nodiscard]] const std::map<std::string, Accession, std::less<>>& accessions() const {
        return accessions_;
    }
    // "A022 Brindlecap"; the ID alone where there is no name. The office's number stands for the ID
    // of one that was opened in the field.
    [[nodiscard]] std::string accessionWords(std::string_view id) const;
    [[nodiscard]] const std::vector<Cross>& crosses() const { return crosses_; }
    [[nodiscard]] const std::vector<Lot>& lots() const { return lots_; }
    // Nothing where nobody knows the descriptor, or the station switched it off.
    [[nodiscard]] const Asked* descriptor(std::string_view code) const;
    // All that can be asked, the built-in ones first.
    [[nodiscard]] const std::vector<const Asked*>& descriptors() const { return asked_; }
    // The position that has the label; nothing where this station has no such label.
    [[nodiscard]] std::optional<std::string> labelled(std::string_view code) const;
    // All labels, with their positions.
    [[nodiscard]] const std::map<std::string, std::string, std::less<>>& labels() const {
        return labels_;
    }
    // The accession that stands at the position on the date; empty where the place is empty.
    [[nodiscard]] std::string accessionAt(std::string_view position, CivilDate date) const;

    // A block that somebody typed as rows × vines before there was an office.
    void addOwnBlock(vineyard::Block block);

private:
    std::vector<vineyard::Block> blocks_;
    vineyard::Plantings plantings_{{}};
    std::map<std::string, std::vector<std::string>, std::less<>> between_; // by "B2-07"
    std::vector<walk::Round> rounds_;
    std::vector<Person> people_;
    std::map<std::string, Accession, std::less<>> accessions_;
    std::vector<Cross> crosses_;
    std::vector<Lot> lots_;
    std::deque<std::string> texts_; // that descriptors point to
    std::deque<std::vector<std::string_view>> words_;
    std::map<std::string, Asked, std::less<>> known_;
    std::vector<const Asked*> asked_;
    std::map<std::string, std::string, std::less<>> labels_;
};

// Takes each settled subject of the catalogue in, in any order, then joins what belongs together.
class Catalogue::Reader {
public:
    explicit Reader(Catalogue& into) : into_(into) {}

    // The first parts of the subjects that it is made of ("block", "planting", …).
    [[nodiscard]] static std::span<const std::string_view> parts();
    // `value` is one CBOR item; a field of another shape is passed over.
    void take(std::string_view path, BytesView value);
    void finish();

private:
    void takeBlock(const journal::Subject& subject, BytesView value);
    void takeRenumbering(std::string_view date, BytesView value);
    void takePlanting(const journal::Subject& subject, BytesView value);
    void takeRound(const journal::Subject& subject, BytesView value);
    void takeAccession(const journal::Subject& subject, BytesView value);
    void takePerson(const journal::Subject& subject, BytesView value);
    void takeCross(const journal::Subject& subject, BytesView value);
    void takeLot(const journal::Subject& subject, BytesView value);
    void finishBlocks();
    void finishDescriptors();
    void setField(Asked& asked, const std::string& field, BytesView value);
    static void setRange(descriptors::Descriptor& known, BytesView value);
    void setCodes(descriptors::Descriptor& known, BytesView value);
    std::string_view keepText(std::string text);
    std::string_view keepText(std::string_view text) { return keepText(std::string(text)); }

    Catalogue& into_;
    std::map<std::string, Block> blocks_;
    std::vector<Planting> plantings_;
    std::vector<Renumbering> renumberings_;
    std::map<std::string, walk::Round> rounds_;
    std::map<std::string, Person> people_;
    std::map<std::string, Cross> crosses_;
    std::map<std::string, Lot> lots_;
    std::map<std::string, std::map<std::string, Bytes>> fields_;
    std::map<std::string, bool> off_;
};

} // namespace bullace::vineyard
