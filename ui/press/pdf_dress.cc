#include "ui/press/pdf_dress.h"

#include <cstdint>
#include <exception>

#include <qpdf/Buffer.hh>
#include <qpdf/JSON.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include "core/units/number_text.h"
#include "ui/press/faults.h"

namespace crosstick::press {
namespace {

using Handle = QPDFObjectHandle;

constexpr double kPointsPerMm = 72 / 25.4;

Handle number(double value, int decimals) {
    return Handle::newReal(numberText(value, decimals));
}

Handle numbers(std::initializer_list<double> values, int decimals) {
    Handle array = Handle::newArray();
    for (const double value : values) {
        array.appendItem(number(value, decimals));
    }
    return array;
}

/// "D:20270313110000Z".
std::string pdfDate(Instant when) {
    std::string digits;
    for (const char letter : isoTime(when, TimeZone{})) {
        if (letter >= '0' && letter <= '9') {
            digits += letter;
        }
    }
    return "D:" + digits.substr(0, 14) + "Z";
}

double heightOf(const PdfPage& page) {
    return page.paper.height.value() * kPointsPerMm;
}

Handle layerNamed(QPDF& pdf, const std::string& name) {
    Handle layer = Handle::newDictionary();
    layer.replaceKey("/Type", Handle::newName("/OCG"));
    layer.replaceKey("/Name", Handle::newUnicodeString(name));
    return pdf.makeIndirectObject(layer);
}

void listLayers(QPDF& pdf, const std::vector<Handle>& layers) {
    if (layers.empty()) {
        return;
    }
    Handle view = Handle::newDictionary();
    view.replaceKey("/Order", Handle::newArray(layers));
    view.replaceKey("/ON", Handle::newArray(layers));
    Handle properties = Handle::newDictionary();
    properties.replaceKey("/OCGs", Handle::newArray(layers));
    properties.replaceKey("/D", view);
    pdf.getRoot().replaceKey("/OCProperties", properties);
}

/// The painter's own content of a page as a form, taken over as it is packed: unpacking and packing it again would cost
/// half as much as painting it.
Handle formOf(QPDF& pdf, QPDFPageObjectHelper& page) {
    Handle contents = page.getObjectHandle().getKey("/Contents");
    if (!contents.isStream()) {
        return page.shallowCopyPage().getFormXObjectForPage();  // from a copy: it would come to call itself
    }
    Handle form = Handle::newStream(&pdf);
    form.replaceStreamData(contents.getRawStreamData(), contents.getDict().getKey("/Filter"),
                           contents.getDict().getKey("/DecodeParms"));
    Handle dictionary = form.getDict();
    dictionary.replaceKey("/Type", Handle::newName("/XObject"));
    dictionary.replaceKey("/Subtype", Handle::newName("/Form"));
    dictionary.replaceKey("/BBox", page.getMediaBox().shallowCopy());
    dictionary.replaceKey("/Resources", page.getAttribute("/Resources", true));
    return form;
}

/// The marks become a form of their own, which can be switched as a layer; the page only calls it. The painter rounds
/// the page to whole points and hangs its content from the rounded upper edge: the form's matrix takes that back.
void wrapMarks(QPDF& pdf, QPDFPageObjectHelper& page, const PdfPage& given, std::vector<Handle>& layers) {
    const double rounded = page.getMediaBox().getArrayItem(3).getNumericValue();
    Handle form = formOf(pdf, page);
    Handle dictionary = form.getDict();
    dictionary.replaceKey("/Matrix", numbers({1, 0, 0, 1, 0, heightOf(given) - rounded}, 6));
    if (!given.layer.empty()) {
        layers.push_back(layerNamed(pdf, given.layer));
        dictionary.replaceKey("/OC", layers.back());
    }
    Handle forms = Handle::newDictionary();
    forms.replaceKey("/Film", pdf.makeIndirectObject(form));
    Handle resources = Handle::newDictionary();
    resources.replaceKey("/XObject", forms);
    Handle object = page.getObjectHandle();
    object.replaceKey("/Resources", resources);
    object.replaceKey("/Contents", pdf.newStream("/Film Do\n"));
    const Handle box = numbers({0, 0, given.paper.width.value() * kPointsPerMm, heightOf(given)}, 6);
    object.replaceKey("/MediaBox", box);
    for (const char* other : {"/CropBox", "/TrimBox", "/BleedBox", "/ArtBox"}) {
        object.removeKey(other);
    }
}

/// ISO 32000-2, 12.10: a viewport whose corners are given in degrees of the grid's own datum.
void registerGround(Handle page, const PdfPage& given) {
    const GroundOnPage& ground = *given.ground;
    const geodesy::CarriedCrs& carried = ground.carried;
    Handle corners = Handle::newArray();
    for (const geodesy::DatumPoint& point : carried.points) {
        corners.appendItem(number(point.latitude.value(), 10));
        corners.appendItem(number(point.longitude.value(), 10));
    }
    Handle system = Handle::newDictionary();
    system.replaceKey("/Type", Handle::newName("/PROJCS"));
    system.replaceKey("/WKT", Handle::newString(carried.wkt));
    if (carried.epsg != 0) {
        system.replaceKey("/EPSG", Handle::newInteger(carried.epsg));
    }
    const Handle square = numbers({0, 0, 0, 1, 1, 1, 1, 0}, 0);
    Handle measure = Handle::newDictionary();
    measure.replaceKey("/Type", Handle::newName("/Measure"));
    measure.replaceKey("/Subtype", Handle::newName("/GEO"));
    measure.replaceKey("/Bounds", square);
    measure.replaceKey("/LPTS", square);
    measure.replaceKey("/GPTS", corners);
    measure.replaceKey("/GCS", system);
    const double height = heightOf(given);
    Handle viewport = Handle::newDictionary();
    viewport.replaceKey("/Type", Handle::newName("/Viewport"));
    viewport.replaceKey("/Name", Handle::newUnicodeString(ground.name));
    viewport.replaceKey("/BBox",
                        numbers({ground.onPage.left * kPointsPerMm, height - ground.onPage.bottom * kPointsPerMm,
                                 ground.onPage.right * kPointsPerMm, height - ground.onPage.top * kPointsPerMm},
                                6));
    viewport.replaceKey("/Measure", measure);
    Handle viewports = Handle::newArray();
    viewports.appendItem(viewport);
    page.replaceKey("/VP", viewports);
}

void sayWhatItIs(QPDF& pdf, const PdfFacts& facts) {
    Handle preferences = Handle::newDictionary();
    preferences.replaceKey("/PrintScaling", Handle::newName("/None"));
    preferences.replaceKey("/DisplayDocTitle", Handle::newBool(true));
    Handle root = pdf.getRoot();
    root.replaceKey("/ViewerPreferences", preferences);
    root.removeKey("/Metadata");
    Handle about = Handle::newDictionary();
    const auto say = [&about](const char* key, const std::string& text) {
        if (!text.empty()) {
            about.replaceKey(key, Handle::newUnicodeString(text));
        }
    };
    say("/Title", facts.title);
    say("/Author", facts.author);
    say("/Subject", facts.subject);
    say("/Creator", "Crosstick");
    say("/Producer", "Crosstick");
    about.replaceKey("/CreationDate", Handle::newString(pdfDate(facts.made)));
    about.replaceKey("/ModDate", Handle::newString(pdfDate(facts.made)));
    pdf.getTrailer().replaceKey("/Info", pdf.makeIndirectObject(about));
}

/// A subset font's name begins with six letters that Qt counts in the order of a hash of addresses, so that they change
/// from run to run. They only have to differ: here they come from the face's own name.
std::string subsetName(const std::string& name) {
    constexpr std::size_t kTag = 8;  // "/QCBAAA+"
    if (name.size() <= kTag || name[kTag - 1] != '+') {
        return name;
    }
    const std::string face = name.substr(kTag);
    std::uint32_t mixed = 2166136261U;  // FNV-1a
    for (const char letter : face) {
        mixed = (mixed ^ static_cast<unsigned char>(letter)) * 16777619U;
    }
    std::string tag;
    for (int n = 0; n < 6; ++n) {
        tag += static_cast<char>('A' + mixed % 26);
        mixed /= 26;
    }
    return '/' + tag + '+' + face;
}

void nameSubsets(QPDF& pdf) {
    for (Handle object : pdf.getAllObjects()) {
        for (const char* key : {"/FontName", "/BaseFont"}) {
            if (object.isDictionary() && object.hasKey(key) && object.getKey(key).isName()) {
                object.replaceKey(key, Handle::newName(subsetName(object.getKey(key).getName())));
            }
        }
    }
}

std::string written(QPDF& pdf) {
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setMinimumPDFVersion("1.7");
    writer.setDeterministicID(true);
    writer.write();
    const std::shared_ptr<Buffer> bytes = writer.getBufferSharedPointer();
    const unsigned char* first = bytes->getBuffer();
    return {first, first + bytes->getSize()};
}

}  // namespace

Result<std::string> dressed(const std::string& raw, const std::vector<PdfPage>& pages, const PdfFacts& facts) {
    try {
        QPDF pdf;
        pdf.processMemoryFile("films", raw.data(), raw.size());
        std::vector<QPDFPageObjectHelper> painted = QPDFPageDocumentHelper(pdf).getAllPages();
        if (painted.size() != pages.size()) {
            return fail(kPdfRefused, {{"why", std::string("a page is missing")}});
        }
        std::vector<Handle> layers;
        for (std::size_t n = 0; n < pages.size(); ++n) {
            wrapMarks(pdf, painted[n], pages[n], layers);
            if (pages[n].ground) {
                registerGround(painted[n].getObjectHandle(), pages[n]);
            }
        }
        listLayers(pdf, layers);
        sayWhatItIs(pdf, facts);
        nameSubsets(pdf);
        return written(pdf);
    } catch (const std::exception& trouble) {
        return fail(kPdfRefused, {{"why", std::string(trouble.what())}});
    }
}

}  // namespace crosstick::press
