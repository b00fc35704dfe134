package sheet

import "strings"

// Headings of Chinese, Japanese, Korean and Thai lists, whose words nothing divides: a
// heading is known as a whole or not at all. Common practice on result sheets, no source.
var eastAsianHeadings = map[Meaning]string{
	Position:   "順位 総合順位 名次 排名 总名次 순위 등수 อันดับ ลำดับ อันดับที่ ลำดับที่",
	Number:     "ナンバー ゼッケン ナンバーカード 号码 參賽號 参赛号 号码布 배번 번호 หมายเลข หมายเลขวิ่ง เบอร์",
	Name:       "氏名 選手名 名前 姓名 选手 이름 성명 ชื่อ ชื่อ-นามสกุล ชื่อ-สกุล นักวิ่ง",
	FamilyName: "姓 성 นามสกุล สกุล",
	GivenName:  "名",
	Time:       "記録 タイム 成绩 成績 기록 เวลา สถิติ",
	GunTime:    "グロスタイム 枪声成绩 槍聲成績 枪声时间 건타임",
	ChipTime:   "ネットタイム 净成绩 淨成績 净时间 넷타임",
	Sex:        "性別 性别 성별 เพศ",
	Age:        "年齢 年龄 年齡 나이 연령 อายุ",
	BirthYear:  "生年 生まれ年 生れ年 出生年 出生年份 출생연도 ปีเกิด",
	BirthDate:  "生年月日 出生日期 생년월일 วันเกิด",
	AgeGroup:   "組別 组别 部門 年代 部 부문 연령대 รุ่น รุ่นอายุ กลุ่มอายุ",
	Club:       "所属 所屬 クラブ チーム クラブ名 俱乐部 跑团 소속 클럽 ทีม สโมสร ชมรม สังกัด",
	Course:     "会場 コース 场地 대회장 코스 สนาม สถานที่",
	Date:       "日付 開催日 日期 날짜 วันที่",
	Distance:   "距離 距离 거리 ระยะทาง",
	Notes:      "備考 备注 備註 비고 หมายเหตุ",
	Status:     "状態 状态 상태",
	SexPlace:   "男女別順位 性别名次 性別名次 성별순위",
	GroupPlace: "部門順位 部門別順位 年代別順位 组别名次 組別名次 부문순위",
	Pace:       "ペース 配速 페이스",
	Gap:        "トップ差 差距 차이",
	Other:      "都道府県 国籍 國籍 国家 지역 국적",
}

// withEastAsian adds those headings in their folded form.
func withEastAsian(phrases map[string]Meaning) map[string]Meaning {
	for m, words := range eastAsianHeadings {
		for _, w := range strings.Fields(words) {
			phrases[fold(w)] = m
		}
	}
	return phrases
}

// eastAsianSexes are the sexes of such lists.
var eastAsianSexes = strings.Fields(fold("男 女 男性 女性 男子 女子 남 여 남자 여자 남성 여성 남자부 여자부 남성부 여성부 ชาย หญิง"))
