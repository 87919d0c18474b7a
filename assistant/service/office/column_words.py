"""The names that offices give to columns, by what they hold, in the nine languages.

Drafted by us, common practice, no source. Case, accents, brackets and marks do not matter.
"""

from collections.abc import Mapping

WORDS: Mapping[str, str] = {
    "phone": "phone|phone number|phone no|phones|telephone|telephone number|tel|tel no|mobile|"
    "mobile number|mobile no|mobile phone|cell|cell phone|cellphone|contact|"
    "contact number|contact no|number of phone|sms number|simu|namba ya simu|"
    "nambari ya simu|no ya simu|simu ya mkononi|téléphone|numéro de téléphone|"
    "n téléphone|no téléphone|portable|numéro portable|mobile tél|numéro|"
    "contact téléphonique|फ़ोन|फोन|फ़ोन नंबर|फोन नंबर|मोबाइल|मोबाइल नंबर|मोबाइल नम्बर|"
    "दूरभाष|संपर्क नंबर|ফোন|ফোন নম্বর|মোবাইল|মোবাইল নম্বর|মোবাইল নাম্বার|ফোন নাম্বার|"
    "যোগাযোগ নম্বর|telepon|nomor telepon|no telepon|nomor hp|no hp|hp|nomor ponsel|"
    "ponsel|handphone|telp|no telp|điện thoại|số điện thoại|sđt|di động|số di động|đt|"
    "số đt|telefone|número de telefone|n telefone|telemóvel|celular|número de celular|"
    "contacto|contato|telepono|numero ng telepono|numero ng selpon|selpon|"
    "cellphone number",
    "name": "name|names|full name|farmer|farmer name|name of farmer|farmers name|farmer s name|"
    "grower|person|first name|jina|jina kamili|jina la mkulima|mkulima|majina|nom|"
    "nom complet|nom et prénom|noms et prénoms|nom du producteur|producteur|"
    "nom de l agriculteur|agriculteur|paysan|नाम|किसान|किसान का नाम|पूरा नाम|নাম|কৃষক|"
    "কৃষকের নাম|পুরো নাম|nama|nama lengkap|nama petani|petani|tên|họ tên|họ và tên|"
    "tên nông dân|nông dân|nome|nome completo|nome do agricultor|agricultor|produtor|"
    "nome do produtor|pangalan|buong pangalan|pangalan ng magsasaka|magsasaka",
    "village": ""
    "village|village name|name of village|community|location|place|settlement|hamlet|"
    "kijiji|jina la kijiji|mtaa|kitongoji|nom du village|localité|communauté|गाँव|गांव|"
    "ग्राम|गाँव का नाम|গ্রাম|গ্রামের নাম|desa|nama desa|kampung|dusun|kelurahan|làng|"
    "thôn|xã|ấp|tên thôn|aldeia|povoado|localidade|nome da aldeia|comunidade|nayon|"
    "barangay|baryo|sitio",
    "language": "language|lang|spoken language|language of texts|lugha|langue|भाषा|ভাষা|bahasa|"
    "ngôn ngữ|tiếng|língua|idioma|wika|lengguwahe",
    "area": "area|field|field area|field size|size of field|plot|plot size|plot area|land|"
    "land area|land size|farm size|rice area|hectares|acres|ha|eneo|eneo la shamba|"
    "ukubwa wa shamba|shamba|ekari|hekta|superficie|surface|surface du champ|champ|"
    "parcelle|taille du champ|क्षेत्र|क्षेत्रफल|खेत|खेत का आकार|रकबा|ज़मीन|জমি|"
    "জমির পরিমাণ|জমির আয়তন|ক্ষেত|আয়তন|luas|luas lahan|luas sawah|lahan|sawah|diện tích|"
    "ruộng|diện tích ruộng|área|área do campo|campo|tamanho do campo|parcela|lawak|"
    "sukat ng bukid|bukid|lawak ng bukid|sukat ng palayan",
    "sowing": ""
    "sowing|sowing date|date of sowing|planned sowing|planned sowing date|sow date|sow|"
    "seeding date|date sown|sowing day|nursery date|tarehe ya kupanda mbegu|"
    "tarehe ya kusia|kusia|tarehe ya kitalu|siku ya kusia|semis|date de semis|"
    "date du semis|date de semis prévue|बुवाई|बुवाई की तारीख|बोआई|बोने की तारीख|बुआई|বপন|"
    "বপনের তারিখ|বীজ বপনের তারিখ|semai|tanggal semai|tanggal sebar|tanggal tabur|"
    "tgl semai|tgl sebar|ngày gieo|ngày gieo mạ|gieo|sementeira|data de sementeira|"
    "data da sementeira|data de semeadura|semeadura|petsa ng pagpupunla|pagpupunla|"
    "petsa ng punla|araw ng pagpupunla",
    "germination": ""
    "germination|germination rate|germination percent|germ|seed test|percent sprouted|"
    "uotaji|kiwango cha uotaji|asilimia ya uotaji|taux de germination|"
    "germination pour cent|अंकुरण|अंकुरण दर|अंकुरण प्रतिशत|অঙ্কুরোদগম|অঙ্কুরোদগম হার|"
    "গজানোর হার|daya tumbuh|perkecambahan|daya kecambah|nảy mầm|tỷ lệ nảy mầm|"
    "tỉ lệ nảy mầm|germinação|taxa de germinação|pagtubo|porsiyento ng pagtubo|"
    "antas ng pagtubo",
    "nursery": "nursery|nursery name|name of nursery|bed|bed name|field name|plot name|kitalu|"
    "jina la kitalu|pépinière|nom de la pépinière|नर्सरी|नर्सरी का नाम|বীজতলা|"
    "বীজতলার নাম|persemaian|nama persemaian|pesemaian|ruộng mạ|tên ruộng mạ|viveiro|"
    "nome do viveiro|punlaan|pangalan ng punlaan",
}
