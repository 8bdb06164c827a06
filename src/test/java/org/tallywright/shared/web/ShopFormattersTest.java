package org.tallywright.shared.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.core.ResolvableType;
import org.springframework.format.support.DefaultFormattingConversionService;
import org.springframework.validation.FieldError;
import org.springframework.web.bind.WebDataBinder;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Length;
import org.tallywright.shared.Money;
import org.tallywright.shared.MoneyFormat;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Unit;
import org.tallywright.shared.Units;

class ShopFormattersTest {
    record Form(Hours hours, Length width, Unit unit, String note) {}

    private final DefaultFormattingConversionService conversion = new DefaultFormattingConversionService();
    private final StaticListableBeanFactory beans = new StaticListableBeanFactory();

    @BeforeEach
    void addFormatters() {
        new ShopFormatters(beans.getBeanProvider(ShopConventions.class)).addFormatters(conversion);
    }

    @Test
    void writesValuesAsTheDefaultShopDoes() {
        assertThat(conversion.convert(Money.of("9413"), String.class)).isEqualTo("$9,413.00");
        assertThat(conversion.convert(Length.parse("51 7/8", Units.IMPERIAL), String.class))
                .isEqualTo("4' 3 7/8\"");
        assertThat(conversion.convert("supply run", HourClass.class)).isEqualTo(HourClass.SUPPLY_RUN);
    }

    @Test
    void followsTheSettingsOfTheShop() {
        beans.addBean("shop", new ShopConventions() {
            @Override
            public ZoneId zone() {
                return ZoneId.of("Europe/Vienna");
            }

            @Override
            public Units units() {
                return Units.METRIC;
            }

            @Override
            public MoneyFormat money() {
                return new MoneyFormat("\u20ac", true, '.', ',');
            }
        });
        assertThat(conversion.convert("803", Length.class)).isEqualTo(Length.parse("803 mm", Units.METRIC));
        assertThat(conversion.convert(Length.parse("803", Units.METRIC), String.class))
                .isEqualTo("803 mm");
        assertThat(conversion.convert(Money.of("5"), String.class)).isEqualTo("\u20ac5.00");
    }

    @Test
    void putsTheSentenceBesideTheFieldAndKeepsWhatWasTyped() {
        WebDataBinder binder = new WebDataBinder(null, "form");
        binder.setTargetType(ResolvableType.forClass(Form.class));
        binder.setConversionService(conversion);
        new RefusedFields().sayWhy(binder);
        Map<String, Object> typed = Map.of("hours", "26", "width", "31 5/8", "unit", "furlong", "note", "north bay");
        binder.construct(new WebDataBinder.ValueResolver() {
            @Override
            public Object resolveValue(String name, Class<?> type) {
                return typed.get(name);
            }

            @Override
            public Set<String> getNames() {
                return typed.keySet();
            }
        });

        FieldError hours = binder.getBindingResult().getFieldError("hours");
        assertThat(hours).isNotNull();
        assertThat(hours.getDefaultMessage()).isEqualTo("26 is more than a day; did you mean 2.6?");
        assertThat(hours.getRejectedValue()).isEqualTo("26");
        assertThat(binder.getBindingResult().getFieldError("unit")).isNotNull();
        assertThat(binder.getBindingResult().getFieldError("width")).isNull();
    }
}
