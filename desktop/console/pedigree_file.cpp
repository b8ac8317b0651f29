// Reads the lines; what they mean together is checked where the pedigree is made.
#include "console/pedigree_file.hpp"

namespace bullace::console {

namespace {

Result<std::size_t> eitherColumn(const WorkFile& file, const char* name, const char* other) {
    const auto found = file.columnIfThere(name);
    const auto also = file.columnIfThere(other);
    return found  ? Result<std::size_t>(*found)
           : also ? Result<std::size_t>(*also)
                  : file.column(name);
}

std::string nameIn(const WorkFile& file, std::size_t row, std::size_t column) {
    return file.isMissing(row, column) ? std::string() : file.text(row, column);
}

Result<std::vector<breeding::CloneLine>> readClones(const std::string& path, Terminal& terminal) {
    std::vector<breeding::CloneLine> clones;
    if (path.empty()) {
        return clones;
    }
    const auto file = WorkFile::read(path, terminal);
    if (!file) {
        return file.error();
    }
    const auto id = file->column("id");
    const auto genotype = file->column("genotype");
    if (!id || !genotype) {
        return id ? genotype.error() : id.error();
    }
    for (std::size_t row = 0; row < file->rows(); ++row) {
        clones.push_back({nameIn(*file, row, *id), nameIn(*file, row, *genotype), file->line(row)});
    }
    return clones;
}

} // namespace

Result<PedigreeFile>
readPedigree(const std::string& path, const std::string& clonePath, Terminal& terminal) {
    const auto file = WorkFile::read(path, terminal);
    if (!file) {
        return file.error();
    }
    const auto id = file->column("id");
    const auto mother = eitherColumn(*file, "mother", "parent1");
    const auto father = eitherColumn(*file, "father", "parent2");
    for (const auto* column : {&id, &mother, &father}) {
        if (!*column) {
            return column->error();
        }
    }
    const auto clones = readClones(clonePath, terminal);
    if (!clones) {
        return clones.error();
    }
    const auto taxon = file->columnIfThere("taxon");
    PedigreeFile result;
    std::vector<breeding::PedigreeLine> lines;
    for (std::size_t row = 0; row < file->rows(); ++row) {
        lines.push_back({nameIn(*file, row, *id),
                         nameIn(*file, row, *mother),
                         nameIn(*file, row, *father),
                         file->line(row)});
        if (taxon && !file->isMissing(row, *taxon)) {
            result.taxa.push_back({lines.back().id, {{file->text(row, *taxon), 1}}});
        }
    }
    auto pedigree = breeding::makePedigree(lines, *clones);
    if (!pedigree) {
        Error error = pedigree.error();
        error.message = path + ": " + error.message;
        return error;
    }
    result.pedigree = std::move(*pedigree);
    return result;
}

} // namespace bullace::console
