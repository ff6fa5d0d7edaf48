// The note of a chosen part while its grade or its screws are entered: its name, and what was last.
import QtQuick
import Kneerail.Ui

Note {
    id: note

    required property WalkModel walk
    readonly property bool torque: walk.pad === WalkModel.TorquePad

    height: head.height + Tokens.inset * 2
    Accessible.name: walk.partTitle

    NoteHead {
        id: head

        width: note.width - Tokens.inset * 2
        title: note.walk.partTitle
        aside: note.torque ? note.walk.torque.lastWords : note.walk.lastGrade > 0 ? qsTr("last visit grade %1").arg(note.walk.lastGrade) : qsTr("not graded before")
        onAsked: note.walk.askForecast()
    }
}
