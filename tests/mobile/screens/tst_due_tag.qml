import QtQuick
import QtTest
import Kneerail.Ui

Item {
    id: root

    width: 500
    height: 200

    DueTag {
        id: tag

        width: implicitWidth
        height: implicitHeight
        caption: "due"
        day: "2 Jun 2031"
    }

    TestCase {
        name: "DueTag"
        when: windowShown

        function test_it_says_its_words_and_holds_them() {
            compare(tag.Accessible.name, "due 2 Jun 2031");
            tag.day = "30 September 2031, in the night";
            tryVerify(() => tag.implicitWidth > Tokens.dueTagWidth);
            tag.day = "2 Jun 2031";
            tryCompare(tag, "implicitWidth", Tokens.dueTagWidth);
        }

        function test_soon_is_ink_and_later_is_sheet() {
            tag.soon = true;
            waitForRendering(tag);
            const ink = grabImage(root);
            compare(ink.pixel(tag.width / 2, Tokens.dueTagHeight - 6), Tokens.ink);
            tag.soon = false;
            waitForRendering(tag);
            const sheet = grabImage(root);
            compare(sheet.pixel(tag.width / 2, Tokens.dueTagHeight - 6), Tokens.sheet);
        }
    }
}
