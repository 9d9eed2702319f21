#include "tests/sheets/hostile_files.h"

#include <algorithm>
#include <fstream>

#include <cpl_string.h>
#include <gdal_priv.h>
#include <gtest/gtest.h>
#include <zlib.h>

#include "tests/sheets/made_sheets.h"

namespace crosstick::testing {
namespace {

namespace fs = std::filesystem;

/// One entry of a TIFF's directory: tag, type (3 short, 4 long), value.
struct TiffEntry {
    std::uint16_t tag = 0, type = 4;
    std::uint32_t value = 0;
};

/// A directory as TIFF 6.0 writes it, little end first, with the place of the next.
std::string tiffDirectory(const std::vector<TiffEntry>& entries, std::uint32_t next) {
    std::string bytes = littleEndian(entries.size(), 2);
    for (const TiffEntry& entry : entries) {
        bytes += littleEndian(entry.tag, 2) + littleEndian(entry.type, 2) + littleEndian(1, 4) +
                 littleEndian(entry.value, 4);
    }
    return bytes + littleEndian(next, 4);
}

/// Grey bytes in one strip. @param compression  1 none, 8 deflate
std::vector<TiffEntry> greyStrip(std::uint32_t columns, std::uint32_t rows, std::uint32_t compression,
                                 std::uint32_t offset, std::uint32_t bytes) {
    return {{256, 4, columns}, {257, 4, rows}, {258, 3, 8},    {259, 3, compression}, {262, 3, 1},
            {273, 4, offset},  {277, 3, 1},    {278, 4, rows}, {279, 4, bytes}};
}

std::string tiffOf(const std::vector<TiffEntry>& entries, const std::string& pixels = {}) {
    return "II*" + std::string(1, '\0') + littleEndian(8 + pixels.size(), 4) + pixels + tiffDirectory(entries, 0);
}

/// So many bytes of zero, packed as zlib packs them.
std::string packedZeros(std::size_t count) {
    z_stream stream{};
    EXPECT_EQ(::deflateInit(&stream, 1), Z_OK);
    std::vector<Bytef> zeros(std::size_t{1} << 20);
    std::vector<Bytef> out(std::size_t{1} << 20);
    std::string packed;
    for (int state = Z_OK; state == Z_OK;) {
        if (stream.avail_in == 0) {
            stream.next_in = zeros.data();
            stream.avail_in = static_cast<uInt>(std::min(count, zeros.size()));
            count -= stream.avail_in;
        }
        stream.next_out = out.data();
        stream.avail_out = static_cast<uInt>(out.size());
        state = ::deflate(&stream, count == 0 ? Z_FINISH : Z_NO_FLUSH);
        packed.append(reinterpret_cast<const char*>(out.data()), out.size() - stream.avail_out);
    }
    ::deflateEnd(&stream);
    return packed;
}

/// A page of PDF: its objects one behind the other, with their table.
std::string pdfOf(const std::vector<std::string>& objects) {
    std::string bytes = "%PDF-1.4\n";
    std::vector<std::size_t> places;
    for (std::size_t n = 0; n < objects.size(); ++n) {
        places.push_back(bytes.size());
        bytes += std::to_string(n + 1) + " 0 obj\n" + objects[n] + "\nendobj\n";
    }
    const std::size_t table = bytes.size();
    bytes += "xref\n0 " + std::to_string(objects.size() + 1) + "\n0000000000 65535 f \n";
    for (const std::size_t place : places) {
        const std::string digits = std::to_string(place);
        bytes += std::string(10 - digits.size(), '0') + digits + " 00000 n \n";
    }
    return bytes + "trailer\n<< /Size " + std::to_string(objects.size() + 1) + " /Root 1 0 R >>\nstartxref\n" +
           std::to_string(table) + "\n%%EOF\n";
}

constexpr const char* kPdfRoot = "<< /Type /Catalog /Pages 2 0 R >>";
constexpr const char* kPdfPages = "<< /Type /Pages /Kids [3 0 R] /Count 1 >>";

class Written {
  public:
    explicit Written(fs::path folder) : folder_(std::move(folder)) { fs::create_directories(folder_); }
    void add(const std::string& name, const std::string& bytes) {
        const fs::path path = folder_ / name;
        writeText(path, bytes);
        files.push_back({name, path});
    }
    std::vector<HostileFile> files;

  private:
    fs::path folder_;
};

}  // namespace

std::string bigEndian(std::uint64_t number, int bytes) {
    std::string text;
    for (int shift = 8 * (bytes - 1); shift >= 0; shift -= 8) {
        text += static_cast<char>((number >> static_cast<unsigned>(shift)) & 255U);
    }
    return text;
}

std::string littleEndian(std::uint64_t number, int bytes) {
    const std::string big = bigEndian(number, bytes);
    return {big.rbegin(), big.rend()};
}

std::string pngChunk(const std::string& kind, const std::string& body) {
    const std::string named = kind + body;
    const auto sum = ::crc32(0, reinterpret_cast<const Bytef*>(named.data()), static_cast<uInt>(named.size()));
    return bigEndian(body.size(), 4) + named + bigEndian(sum, 4);
}

std::string pngOf(std::uint32_t columns, std::uint32_t rows, std::size_t zeros) {
    const std::string head = bigEndian(columns, 4) + bigEndian(rows, 4) + std::string("\x08\x00\x00\x00\x00", 5);
    return "\x89PNG\r\n\x1a\n" + pngChunk("IHDR", head) +
           pngChunk("IDAT", zeros == 0 ? std::string() : packedZeros(zeros)) + pngChunk("IEND", "");
}

std::vector<HostileFile> absurdSizes(const fs::path& folder) {
    Written written(folder);
    constexpr std::uint32_t kVast = 2000000000;
    written.add("vast.png", pngOf(kVast, kVast));
    written.add("wide.png", pngOf(200000, 10));
    written.add("empty.png", pngOf(60000, 60000));
    written.add("vast.tif", tiffOf(greyStrip(kVast, kVast, 1, 8, 0)));
    written.add("onestrip.tif", tiffOf(greyStrip(60000, 60000, 8, 8, 4), "none"));
    written.add("vast.bmp", "BM" + littleEndian(60, 4) + littleEndian(0, 4) + littleEndian(54, 4) +
                                littleEndian(40, 4) + littleEndian(kVast, 4) + littleEndian(kVast, 4) +
                                littleEndian(1, 2) + littleEndian(24, 2) + std::string(24, '\0') + "pixels");
    // SOI, a frame of 65,500 a side in three colours, and no scan.
    written.add("vast.jpg", "\xff\xd8\xff\xc0" + bigEndian(17, 2) + "\x08" + bigEndian(65500, 2) + bigEndian(65500, 2) +
                                std::string("\x03\x01\x11\x00\x02\x11\x00\x03\x11\x00", 10) + "\xff\xd9");
    written.add("vast.asc", "ncols 2000000000\nnrows 2000000000\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3\n");
    written.add("vast.pdf",
                pdfOf({kPdfRoot, kPdfPages, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 9000000 9000000] >>"}));
    makeSheet(folder / "sparse.tif",
              {.columns = 200000, .rows = 200000, .options = {"SPARSE_OK=TRUE", "TILED=YES", "BIGTIFF=YES"}});
    written.files.push_back({"sparse.tif", folder / "sparse.tif"});
    return written.files;
}

std::vector<HostileFile> bombs(const fs::path& folder) {
    Written written(folder);
    const std::string comment = std::string("Comment\0\0", 9) + packedZeros(std::size_t{256} << 20);
    std::string texts = "\x89PNG\r\n\x1a\n" +
                        pngChunk("IHDR", bigEndian(4, 4) + bigEndian(4, 4) + std::string("\x08\x00\x00\x00\x00", 5));
    for (int n = 0; n < 8; ++n) {
        texts += pngChunk("zTXt", comment);
    }
    written.add("texts.png", texts + pngChunk("IDAT", "") + pngChunk("IEND", ""));
    // A strip that says it is 100 by 100 and unpacks to half a gigabyte; one that is as large as it says.
    const std::string zeros = packedZeros(std::size_t{512} << 20);
    written.add("swelling.tif", tiffOf(greyStrip(100, 100, 8, 8, static_cast<std::uint32_t>(zeros.size())), zeros));
    written.add("onestrip.tif", tiffOf(greyStrip(32768, 16384, 8, 8, static_cast<std::uint32_t>(zeros.size())), zeros));
    const std::string blanks = packedZeros(std::size_t{32} << 20);  // each is read as one by itself
    const std::string contents =
        "<< /Filter /FlateDecode /Length " + std::to_string(blanks.size()) + " >>\nstream\n" + blanks + "\nendstream";
    written.add("contents.pdf",
                pdfOf({kPdfRoot, kPdfPages, "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 400 400] /Contents 4 0 R >>",
                       contents}));
    const std::string image =
        "<< /Type /XObject /Subtype /Image /Width 22000 /Height 22000 /ColorSpace /DeviceGray /BitsPerComponent 8 "
        "/Filter /FlateDecode /Length " +
        std::to_string(zeros.size()) + " >>\nstream\n" + zeros + "\nendstream";
    const std::string draw = "q 400 0 0 400 0 0 cm /Im Do Q";
    written.add("image.pdf",
                pdfOf({kPdfRoot, kPdfPages,
                       "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 400 400] /Contents 5 0 R "
                       "/Resources << /XObject << /Im 4 0 R >> >> >>",
                       image, "<< /Length " + std::to_string(draw.size()) + " >>\nstream\n" + draw + "\nendstream"}));
    return written.files;
}

std::vector<HostileFile> loops(const fs::path& folder) {
    Written written(folder);
    const auto entries = greyStrip(4, 4, 1, 8, 16);
    const std::string pixels(16, '\x40');
    const std::string head = "II*" + std::string(1, '\0') + littleEndian(8 + pixels.size(), 4) + pixels;
    const auto first = static_cast<std::uint32_t>(head.size());
    written.add("itself.tif", head + tiffDirectory(entries, first));
    const auto second = static_cast<std::uint32_t>(first + tiffDirectory(entries, 0).size());
    written.add("eachother.tif", head + tiffDirectory(entries, second) + tiffDirectory(entries, first));
    auto within = entries;
    within.push_back({330, 4, first});  // a directory under itself
    written.add("under.tif", head + tiffDirectory(within, first));
    written.add("pages.pdf", pdfOf({kPdfRoot, "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
                                    "<< /Type /Pages /Parent 2 0 R /Kids [2 0 R] /Count 1 >>"}));
    const std::string draw = "/Fm Do";
    const std::string form =
        "<< /Type /XObject /Subtype /Form /BBox [0 0 99 99] /Resources << /XObject << /Fm 4 0 R >> "
        ">> /Length 6 >>\nstream\n" +
        draw + "\nendstream";
    written.add("forms.pdf", pdfOf({kPdfRoot, kPdfPages,
                                    "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 99 99] /Contents 5 0 R /Resources << "
                                    "/XObject << /Fm 4 0 R >> >> >>",
                                    form, "<< /Length 6 >>\nstream\n" + draw + "\nendstream"}));
    return written.files;
}

std::vector<HostileFile> wrongNames(const fs::path& folder) {
    Written written(folder);
    for (const char* name : {"words.tif", "words.png", "words.jpg", "words.pdf", "words.bmp", "words.webp", "words.hgt",
                             "words.dt2", "words.asc"}) {
        written.add(name, "PL TRIVET runs along the road from the mill to the ford.\n");
    }
    written.add("picture.pdf", pngOf(40, 40));
    written.add("program.tif", "\x7f" + std::string("ELF\x02\x01\x01") + std::string(200, '\0'));
    written.add("archive.tif", "PK\x03\x04" + std::string(200, 'a'));
    written.add("nothing.tif", "");
    written.add("zeros.tif", std::string(1 << 20, '\0'));
    return written.files;
}

std::vector<HostileFile> cutAtEveryTenth(const fs::path& folder) {
    Written written(folder);
    GDALAllRegister();
    makeSheet(folder / "source.tif",
              {.columns = 700, .rows = 500, .bands = 3, .options = {"COMPRESS=LZW"}, .value = [](int c, int r, int) {
                   return static_cast<double>(
                       (static_cast<unsigned>(c) * 2654435761U + static_cast<unsigned>(r)) >> 9U & 255U);
               }});
    GDALDataset* source = GDALDataset::FromHandle(GDALOpen((folder / "source.tif").c_str(), GA_ReadOnly));
    struct Form {
        const char *name, *driver, *option;
    };
    for (const Form& form : {Form{"strips.tif", "GTiff", "COMPRESS=NONE"},
                             {"tiles.tif", "GTiff", "COMPRESS=DEFLATE"},
                             {"a.png", "PNG", "ZLEVEL=1"},
                             {"a.jpg", "JPEG", "QUALITY=80"},
                             {"scans.jpg", "JPEG", "PROGRESSIVE=YES"},
                             {"a.bmp", "BMP", ""},
                             {"a.webp", "WEBP", "LOSSLESS=YES"},
                             {"a.pdf", "PDF", "COMPRESS=JPEG"}}) {
        CPLStringList options;
        if (*form.option != '\0') {
            options.AddString(form.option);
        }
        const fs::path whole = folder / form.name;
        GDALDriver* writer = GetGDALDriverManager()->GetDriverByName(form.driver);
        GDALClose(
            GDALDataset::ToHandle(writer->CreateCopy(whole.c_str(), source, FALSE, options.List(), nullptr, nullptr)));
        std::ifstream in(whole, std::ios::binary);
        const std::string bytes{std::istreambuf_iterator<char>(in), {}};
        for (std::size_t tenth = 0; tenth < 10; ++tenth) {
            written.add(std::to_string(tenth) + form.name, bytes.substr(0, bytes.size() * tenth / 10));
        }
    }
    GDALClose(GDALDataset::ToHandle(source));
    return written.files;
}

}  // namespace crosstick::testing
