// What ended a finding, by whom, and on what it is ended where it could not wait.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Column {
    id: end

    required property FindingEnding ending
    property bool portrait: false
    readonly property list<int> works: [1, 2, 3, 4, 7, 8]
    readonly property bool said: ending.work > 0 || ending.how > 0

    spacing: Tokens.gap

    NamedKeys {
        visible: end.ending.mends
        width: parent.width
        caption: qsTr("Mended? That part's history starts again.")
        named: "work"
        names: [qsTr("Re-torqued"), qsTr("Touched up"), qsTr("Replaced"), qsTr("Cut out, welded in"), qsTr("Cleaned"), qsTr("Base re-fixed")]
        now: Array.from(end.works).indexOf(end.ending.work)
        columns: end.portrait ? 6 : 3
        textSize: Tokens.smallText
        captionSize: Tokens.smallText
        onChosen: place => end.ending.chooseWork(end.works[place])
    }

    NamedKeys {
        readonly property list<int> codes: end.ending.mends ? [3, 4] : [1, 3, 4]

        width: parent.width
        caption: end.ending.mends ? qsTr("Or was it none?") : qsTr("What ended it?")
        named: "how"
        names: end.ending.mends ? [qsTr("Looked again: nothing wrong"), qsTr("Raised by mistake")] : [qsTr("Mended"), qsTr("Looked again: nothing wrong"), qsTr("Raised by mistake")]
        now: Array.from(codes).indexOf(end.ending.how)
        columns: end.ending.mends ? 2 : 3
        textSize: Tokens.smallText
        captionSize: Tokens.smallText
        onChosen: place => end.ending.chooseHow(codes[place])
    }

    NamedKeys {
        visible: end.ending.asksByWhom
        width: parent.width
        caption: qsTr("By whom?")
        named: "by"
        names: end.ending.hands
        now: end.ending.by
        columns: 3
        textSize: Tokens.smallText
        captionSize: Tokens.smallText
        onChosen: place => end.ending.chooseBy(place)
    }

    NamedKeys {
        visible: end.ending.asksOnWhat && end.said
        width: parent.width
        caption: qsTr("It could not wait. On what is it ended?")
        named: "on"
        names: [qsTr("Pushed and looked"), qsTr("Looked"), qsTr("Papers only")]
        now: end.ending.onWhat - 1
        columns: 3
        textSize: Tokens.smallText
        captionSize: Tokens.smallText
        onChosen: place => end.ending.chooseOnWhat(place + 1)
    }

    InkText {
        objectName: "endSays"
        width: parent.width
        text: end.ending.missing !== "" ? end.ending.missing : end.ending.says
        bold: end.ending.missing === ""
        color: end.ending.missing !== "" ? Tokens.ink2 : Tokens.ink
        font.pixelSize: Tokens.smallText
        wrapMode: Text.Wrap
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }
}
