#include "tests/files/failing_disk.h"

#include <cstring>
#include <new>

#include <sqlite3.h>

namespace crosstick::testing {

/// What SQLite calls, with the counter that its calls share.
struct FailingDisk::Disk {
    sqlite3_vfs vfs{};
    sqlite3_io_methods methods{};
    sqlite3_vfs* real = nullptr;
    int left = 0;
    Trouble trouble = Trouble::Once;
    bool failed = false;

    [[nodiscard]] bool failsNow() {
        if (left > 0) {
            --left;
            failed = left == 0;
            return failed;
        }
        return trouble == Trouble::ForGood;
    }
};

namespace {

/// The real file follows this in the memory that SQLite sets aside.
struct Between {
    sqlite3_file base;
    void* disk;
};

sqlite3_file* realOf(sqlite3_file* file) {
    return reinterpret_cast<sqlite3_file*>(reinterpret_cast<char*>(file) + sizeof(Between));
}

}  // namespace

namespace {

template <class Disk>
Disk& diskOf(sqlite3_file* file) {
    return *static_cast<Disk*>(reinterpret_cast<Between*>(file)->disk);
}

template <class Disk>
sqlite3_io_methods methodsFor() {
    sqlite3_io_methods m{};
    m.iVersion = 1;
    m.xClose = [](sqlite3_file* f) { return realOf(f)->pMethods->xClose(realOf(f)); };
    m.xRead = [](sqlite3_file* f, void* to, int size, sqlite3_int64 at) {
        return realOf(f)->pMethods->xRead(realOf(f), to, size, at);
    };
    m.xWrite = [](sqlite3_file* f, const void* from, int size, sqlite3_int64 at) {
        return diskOf<Disk>(f).failsNow() ? SQLITE_IOERR_WRITE : realOf(f)->pMethods->xWrite(realOf(f), from, size, at);
    };
    m.xTruncate = [](sqlite3_file* f, sqlite3_int64 size) {
        return diskOf<Disk>(f).failsNow() ? SQLITE_IOERR_TRUNCATE : realOf(f)->pMethods->xTruncate(realOf(f), size);
    };
    m.xSync = [](sqlite3_file* f, int flags) {
        return diskOf<Disk>(f).failsNow() ? SQLITE_IOERR_FSYNC : realOf(f)->pMethods->xSync(realOf(f), flags);
    };
    m.xFileSize = [](sqlite3_file* f, sqlite3_int64* size) { return realOf(f)->pMethods->xFileSize(realOf(f), size); };
    m.xLock = [](sqlite3_file* f, int level) { return realOf(f)->pMethods->xLock(realOf(f), level); };
    m.xUnlock = [](sqlite3_file* f, int level) { return realOf(f)->pMethods->xUnlock(realOf(f), level); };
    m.xCheckReservedLock = [](sqlite3_file* f, int* held) {
        return realOf(f)->pMethods->xCheckReservedLock(realOf(f), held);
    };
    m.xFileControl = [](sqlite3_file* f, int what, void* with) {
        return realOf(f)->pMethods->xFileControl(realOf(f), what, with);
    };
    m.xSectorSize = [](sqlite3_file* f) { return realOf(f)->pMethods->xSectorSize(realOf(f)); };
    m.xDeviceCharacteristics = [](sqlite3_file* f) { return realOf(f)->pMethods->xDeviceCharacteristics(realOf(f)); };
    return m;
}

template <class Disk>
int openFile(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* flagsOut) {
    auto& disk = *static_cast<Disk*>(vfs->pAppData);
    new (file) Between{{nullptr}, &disk};
    const int code = disk.real->xOpen(disk.real, name, realOf(file), flags, flagsOut);
    file->pMethods = realOf(file)->pMethods == nullptr ? nullptr : &disk.methods;
    return code;
}

template <class Disk>
int deleteFile(sqlite3_vfs* vfs, const char* name, int syncFolder) {
    auto& disk = *static_cast<Disk*>(vfs->pAppData);
    return disk.failsNow() ? SQLITE_IOERR_DELETE : disk.real->xDelete(disk.real, name, syncFolder);
}

}  // namespace

FailingDisk::FailingDisk(int nth, Trouble trouble) : disk_(std::make_unique<Disk>()) {
    disk_->left = nth;
    disk_->trouble = trouble;
    disk_->real = sqlite3_vfs_find(nullptr);
    disk_->methods = methodsFor<Disk>();
    disk_->vfs = *disk_->real;
    disk_->vfs.pNext = nullptr;
    disk_->vfs.zName = "failing";
    disk_->vfs.pAppData = disk_.get();
    disk_->vfs.szOsFile = disk_->real->szOsFile + static_cast<int>(sizeof(Between));
    disk_->vfs.xOpen = openFile<Disk>;
    disk_->vfs.xDelete = deleteFile<Disk>;
    // The others take the vfs only to find their own data, of which these need none but the way to full names.
    disk_->vfs.xAccess = [](sqlite3_vfs* vfs, const char* name, int flags, int* result) {
        auto* real = static_cast<Disk*>(vfs->pAppData)->real;
        return real->xAccess(real, name, flags, result);
    };
    disk_->vfs.xFullPathname = [](sqlite3_vfs* vfs, const char* name, int size, char* out) {
        auto* real = static_cast<Disk*>(vfs->pAppData)->real;
        return real->xFullPathname(real, name, size, out);
    };
    sqlite3_vfs_register(&disk_->vfs, 1);
}

FailingDisk::~FailingDisk() {
    sqlite3_vfs_unregister(&disk_->vfs);
    sqlite3_vfs_register(disk_->real, 1);
}

bool FailingDisk::hasFailed() const {
    return disk_->failed;
}

}  // namespace crosstick::testing
