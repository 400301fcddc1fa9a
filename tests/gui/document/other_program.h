#pragma once
#include <QByteArray>
#include <QCoreApplication>
#include <QProcess>
#include <QProcessEnvironment>
#include <QString>

namespace hither::test {

/// This test program once more, as another one: it does what the hidden case of `other_program.cpp` says.
class OtherProgram {
public:
    OtherProgram(const QString& job, const QString& path) {
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert("HITHER_TEST_JOB", job);
        environment.insert("HITHER_TEST_PATH", path);
        process_.setProcessEnvironment(environment);
        process_.setProcessChannelMode(QProcess::ForwardedErrorChannel);
        process_.start(QCoreApplication::applicationFilePath(), {"[.other program]"});
    }
    ~OtherProgram() { kill(); }
    /// Waits for a word of it; false when it ends without.
    bool said(const QByteArray& word) {
        while (!heard_.contains(word) && process_.waitForReadyRead(60000)) heard_ += process_.readAllStandardOutput();
        return heard_.contains(word);
    }
    long pid() const { return static_cast<long>(process_.processId()); }
    /// SIGKILL: it cannot do anything more.
    void kill() {
        process_.kill();
        process_.waitForFinished(60000);
    }

private:
    QProcess process_;
    QByteArray heard_;
};

}  // namespace hither::test
